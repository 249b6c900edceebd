"""The review in the desktop: one subject, shared by the profile, the list of flagged stations and the map."""

from qgis.core import Qgis, QgsMapLayer
from qgis.PyQt.QtCore import Qt

from ...algorithms.language.translation import tr
from ..message_bar import tell
from .stale_line import StaleLine, on_top_of
from .staleness import Staleness
from .tabs import tabify


class Review:
    """Opens the docks when they are first asked for, keeps them in step, and takes all back."""

    def __init__(self, iface, open_form):
        self.iface, self.open_form = iface, open_form
        self._staleness, self._bringing, self._lines = Staleness(iface, iface.mainWindow()), None, []
        # Called when layers were made anew: what was said of them before no longer holds.
        self.renewed = []
        self.subject = self.link = None
        self.docks = {}

    def open_profile(self):
        """Open the profile of the stations of the active layer, or of a layer that has some."""
        from .. import follow_up_forms
        from ..profile.dock import ProfileDock

        dock = self._open("profile", ProfileDock, Qt.DockWidgetArea.BottomDockWidgetArea)
        if dock is not None and dock.follow_up.menu() is None:
            dock.follow_up.setMenu(follow_up_forms.menu(dock, lambda: self.subject.layer, self.open_form))
            dock.what_if.design_wanted.connect(self._design_wanted)
        return dock

    def _design_wanted(self, layer, controls, axis):
        """Open the form of the design with a line that was tried as its chord."""
        from .. import follow_up_forms

        parameters, doubt = follow_up_forms.chord(layer, controls, axis)
        if doubt:
            tell(self.iface.messageBar(), doubt, Qgis.MessageLevel.Warning)
        self.open_form(parameters)

    def open_flagged(self):
        """Open the list of flagged stations with their decisions."""
        from ..decisions.dock import FlaggedDock

        dock = self._open("flagged", FlaggedDock, Qt.DockWidgetArea.RightDockWidgetArea)
        return dock

    def _open(self, name, kind, area):
        self._start()
        if name not in self.docks:
            try:
                dock = kind(self.iface, self.subject, self.link)
            except ImportError as error:
                tell(
                    self.iface.messageBar(),
                    tr("The profile needs matplotlib in QGIS's own Python: {}").format(error),
                    Qgis.MessageLevel.Critical,
                )
                return None
            self.docks[name] = dock
            self.show_stale_line(dock)
            window = self.iface.mainWindow()
            before = window.size()
            self.iface.addDockWidget(area, dock)
            if area == Qt.DockWidgetArea.RightDockWidgetArea:
                tabify(window, dock)
                # One under the other for a moment, docks can have pushed the window beyond a small screen.
                if not window.isMaximized() and window.height() > before.height():
                    window.resize(before)
            dock.visibilityChanged.connect(self._visibility)
            if name == "flagged":
                dock.profile_wanted.connect(lambda: self.open_profile())
            self._give_room(dock, area)
        dock = self.docks[name]
        dock.setUserVisible(True)
        self.subject.choose_one(self.iface.activeLayer())
        self._visibility()
        return dock

    def _give_room(self, dock, area):
        """A new dock is as small as it can be; a chart and a list need more."""
        window = self.iface.mainWindow()
        if area == Qt.DockWidgetArea.BottomDockWidgetArea:
            window.resizeDocks([dock], [int(0.46 * window.height())], Qt.Orientation.Vertical)
        else:
            window.resizeDocks(
                [dock], [min(max(int(0.29 * window.width()), 420), window.width() // 2)], Qt.Orientation.Horizontal
            )

    def _start(self):
        if self.subject is not None:
            return
        from .map_link import MapLink
        from .subject import Subject

        self.subject = Subject(self.iface.mainWindow())
        self.link = MapLink(self.iface.mapCanvas(), self.subject, self.iface.mainWindow())
        self.iface.currentLayerChanged.connect(self._layer_changed)

    def _visibility(self, *_):
        self.link.set_active(any(dock.isVisible() for dock in self.docks.values()))

    def _layer_changed(self, layer):
        """Follow the active layer where it can be reviewed; others change nothing."""
        if isinstance(layer, QgsMapLayer) and any(dock.isVisible() for dock in self.docks.values()):
            self.subject.set_layer(layer)

    # --- what is out of date

    @property
    def staleness(self):
        """What in the project is older than what it was made from; anew where it was taken back."""
        if self._staleness is None:
            self._staleness = Staleness(self.iface, self.iface.mainWindow())
        return self._staleness

    def show_stale_line(self, dock):
        """Put the line that names what is out of date above all that a dock shows."""
        line = StaleLine(self.staleness, self.bring_up_to_date, dock)
        on_top_of(dock, line)
        self._lines.append(line)
        dock.destroyed.connect(lambda: self._lines.remove(line) if line in self._lines else None)

    def bring_up_to_date(self):
        """Run the recorded chain again in the background; one passage at a time."""
        if self._bringing is None:
            from .bring_up_to_date import BringUpToDate

            self._bringing = BringUpToDate(self.iface, self.staleness, self.iface.mainWindow())
            self._bringing.renewed.connect(self._tell_renewed)
            self._bringing.ended.connect(self._brought)
            self._bringing.begin()

    def _tell_renewed(self):
        for hear in self.renewed:
            hear()

    def _brought(self):
        bringing, self._bringing = self._bringing, None
        if bringing is not None:
            bringing.deleteLater()
        if self.subject is not None and self.subject.layer is not None:
            self.subject.read()

    def close(self):
        """Take back docks, marks and connections."""
        if self._bringing is not None:
            self._bringing.forget()
            self._bringing.deleteLater()
            self._bringing = None
        for line in self._lines:
            line.release()
        self._lines = []
        if self._staleness is not None:
            self._staleness.close()
            self._staleness = None
        if self.subject is None:
            return
        self.iface.currentLayerChanged.disconnect(self._layer_changed)
        for dock in self.docks.values():
            dock.visibilityChanged.disconnect(self._visibility)
            dock.release()
            self.iface.removeDockWidget(dock)
            dock.deleteLater()
        self.docks = {}
        self.link.close()
        self.subject.close()
        self.subject = self.link = None
