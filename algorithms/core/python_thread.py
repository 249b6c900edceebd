"""Calls kept to threads that Python itself has made: in others pyproj can crash the whole process.

From pyproj 3.7 on its contexts end with Python's own record of a thread, which a thread made by Qt loses after each
call into Python; the next call in that thread then uses freed memory. Source: issue 1509 of pyproj4/pyproj, and seen
with pyproj 3.7.1 in the host's worker threads.
"""

import threading
from concurrent.futures import ThreadPoolExecutor
from functools import wraps

_here = threading.local()


def _mark():
    _here.is_ours = True


_THREAD = ThreadPoolExecutor(max_workers=1, thread_name_prefix="tautline", initializer=_mark)


def in_python_thread(function):
    """The same function, which runs in the main thread where it is called there, else in one thread of our own."""

    @wraps(function)
    def called(*arguments, **options):
        if threading.current_thread() is threading.main_thread() or getattr(_here, "is_ours", False):
            return function(*arguments, **options)
        return _THREAD.submit(function, *arguments, **options).result()

    return called
