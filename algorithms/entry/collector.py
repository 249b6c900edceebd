"""Python's collector of garbage, which stands still while a run goes on in a thread of the host's.

A precaution: it destroys what it finds in whatever thread it happens to run, and what belongs to the window, layers
among it, is not to be destroyed in a run's: a host has ended of that.
"""

import gc
import threading
from contextlib import contextmanager

from qgis.PyQt.QtCore import QCoreApplication, QObject, Qt, pyqtSignal, pyqtSlot


class _Collector(QObject):
    """Counts the runs for which it stands still; started again in the window's thread, where it then clears away."""

    ended = pyqtSignal()

    def __init__(self):
        super().__init__()
        self._lock, self._runs, self._stopped = threading.Lock(), 0, False
        if QCoreApplication.instance() is not None:
            self.moveToThread(QCoreApplication.instance().thread())
        self.ended.connect(self._go_on, Qt.ConnectionType.QueuedConnection)

    def stop(self):
        with self._lock:
            self._runs += 1
            # Whoever else has switched it off is to find it off afterwards.
            if gc.isenabled():
                self._stopped = True
                gc.disable()

    def end(self):
        with self._lock:
            self._runs -= 1
        # Started here, it would begin with the next thing this thread makes.
        self.ended.emit()

    @pyqtSlot()
    def _go_on(self):
        with self._lock:
            if self._stopped and not self._runs:
                self._stopped = False
                gc.enable()


_COLLECTOR = _Collector()


@contextmanager
def no_collection():
    """Nothing is collected while the block runs, unless it runs in the main thread; it goes on at the next turn of the
    window's loop."""
    if threading.get_ident() == threading.main_thread().ident:
        yield
        return
    _COLLECTOR.stop()
    try:
        yield
    finally:
        _COLLECTOR.end()
