"""A plain window in place of the host's application: map, layer tree, message bar and menus of the window library.

    /usr/bin/python3 plain_window.py [--profiles-path FOLDER] [--code SCRIPT] [--lang LANGUAGE]

Takes the application's options that the tests give it, so that their scripts run in either. For hosts that have the
window library and no application, such as one built with Qt 6 for a test. What is the application's own (its forms of
layers, its editing, its installer of plugins) is not here.
"""

import argparse
import os
import sys
from pathlib import Path

import qgis.utils
from qgis.core import QgsApplication, QgsLayerTreeModel, QgsMapLayer, QgsProject, QgsSettings
from qgis.gui import (
    QgsBrowserGuiModel,
    QgsGui,
    QgsLayerTreeMapCanvasBridge,
    QgsLayerTreeView,
    QgsMapCanvas,
    QgsMapToolPan,
    QgsMessageBar,
)
from qgis.PyQt.QtCore import QObject, Qt, QTimer, pyqtSignal
from qgis.PyQt.QtWidgets import QDockWidget, QGridLayout, QMainWindow, QMessageBox, QSizePolicy, QWidget

try:
    from qgis.PyQt.QtGui import QAction
except ImportError:  # Qt 5
    from qgis.PyQt.QtWidgets import QAction


class PlainInterface(QObject):
    """What the plugin and its tests ask of the application's ``iface``, by the same names."""

    currentLayerChanged = pyqtSignal(QgsMapLayer)  # noqa: N815 - the host's name

    def __init__(self):
        super().__init__()
        project = QgsProject.instance()
        self._window, self._browser = QMainWindow(), None
        self._window.setWindowTitle("Plain window")
        self._window.setDockNestingEnabled(True)
        self._canvas = QgsMapCanvas()
        self._canvas.setObjectName("theMapCanvas")
        self._canvas.setCanvasColor(Qt.GlobalColor.white)
        self._pan = QgsMapToolPan(self._canvas)
        self._canvas.setMapTool(self._pan)
        # The bar lies over the map's upper edge, as the application's does.
        self._bar = QgsMessageBar()
        self._bar.setSizePolicy(QSizePolicy.Policy.Minimum, QSizePolicy.Policy.Fixed)
        middle = QWidget()
        grid = QGridLayout(middle)
        grid.setContentsMargins(0, 0, 0, 0)
        grid.addWidget(self._canvas, 0, 0, 2, 1)
        grid.addWidget(self._bar, 0, 0, 1, 1)
        self._window.setCentralWidget(middle)
        self._tree()
        self._menus()
        project.crsChanged.connect(self._take_crs)
        self._bridge = QgsLayerTreeMapCanvasBridge(project.layerTreeRoot(), self._canvas)
        self._canvas.setDestinationCrs(project.crs())
        self._window.resize(1280, 800)

    def _tree(self):
        self._model = QgsLayerTreeModel(QgsProject.instance().layerTreeRoot())
        for flag in ("AllowNodeReorder", "AllowNodeRename", "AllowNodeChangeVisibility", "UseEmbeddedWidgets"):
            self._model.setFlag(getattr(QgsLayerTreeModel.Flag, flag))
        self._view = QgsLayerTreeView()
        self._view.setModel(self._model)
        self._view.currentLayerChanged.connect(self.currentLayerChanged)
        dock = QDockWidget("Layers", self._window)
        dock.setObjectName("Layers")
        dock.setWidget(self._view)
        self._window.addDockWidget(Qt.DockWidgetArea.LeftDockWidgetArea, dock)

    def _menus(self):
        bar = self._window.menuBar()
        self._new = QAction("&New", self._window)
        self._new.setObjectName("mActionNewProject")
        self._new.triggered.connect(lambda: self.newProject(True))
        bar.addMenu("&Project").addAction(self._new)
        self._plugins = bar.addMenu("&Plugins")
        self._submenus = {}

    def _take_crs(self):
        self._canvas.setDestinationCrs(QgsProject.instance().crs())

    # --- the host's names

    def mainWindow(self):  # noqa: N802
        return self._window

    def mapCanvas(self):  # noqa: N802
        return self._canvas

    def messageBar(self):  # noqa: N802
        return self._bar

    def layerTreeView(self):  # noqa: N802
        return self._view

    def layerTreeCanvasBridge(self):  # noqa: N802
        return self._bridge

    def activeLayer(self):  # noqa: N802
        return self._view.currentLayer()

    def setActiveLayer(self, layer):  # noqa: N802
        self._view.setCurrentLayer(layer)
        return True

    def actionNewProject(self):  # noqa: N802
        return self._new

    def pluginMenu(self):  # noqa: N802
        return self._plugins

    def addPluginToMenu(self, name, action):  # noqa: N802
        if name not in self._submenus:
            self._submenus[name] = self._plugins.addMenu(name)
        self._submenus[name].addAction(action)

    def removePluginMenu(self, name, action):  # noqa: N802
        menu = self._submenus.get(name)
        if menu is not None:
            menu.removeAction(action)
            if menu.isEmpty():
                self._plugins.removeAction(menu.menuAction())
                del self._submenus[name]

    def addDockWidget(self, area, dock):  # noqa: N802
        self._window.addDockWidget(area, dock)
        dock.show()

    def removeDockWidget(self, dock):  # noqa: N802
        self._window.removeDockWidget(dock)

    def newProject(self, prompt=False):  # noqa: N802
        """An empty project; False where the user keeps the changed one."""
        project = QgsProject.instance()
        if prompt and project.isDirty():
            buttons = QMessageBox.StandardButton
            answer = QMessageBox.question(
                self._window, "Save?", "Save the project?", buttons.Save | buttons.Discard | buttons.Cancel
            )
            if answer == buttons.Cancel or (answer == buttons.Save and not project.write()):
                return False
        project.clear()
        return True

    def browserModel(self):  # noqa: N802
        """For the files and layers that the toolbox's forms offer."""
        if self._browser is None:
            self._browser = QgsBrowserGuiModel(self)
        return self._browser

    def messageTimeout(self):  # noqa: N802
        return 5


def started(profiles, language=None):
    """The application object, with the toolbox and a plain interface in place of the host's."""
    profile = Path(profiles) / "profiles" / "default"
    profile.mkdir(parents=True, exist_ok=True)
    application = QgsApplication([os.fsencode(sys.argv[0])], True, str(profile))
    if language:
        # The host's own texts, on 3.40 and later.
        QgsApplication.setTranslation(language)
    application.setOrganizationName("QGIS")
    application.setApplicationName("QGIS3")
    application.initQgis()
    if language:
        QgsSettings().setValue("locale/overrideFlag", True)
        QgsSettings().setValue("locale/userLocale", language)
    QgsGui.instance()
    qgis.utils.iface = PlainInterface()
    for folder in ("/usr/share/qgis/python/plugins", os.path.join(QgsApplication.pkgDataPath(), "python", "plugins")):
        if os.path.isdir(folder) and folder not in sys.path:
            sys.path.append(folder)
    from processing.core.Processing import Processing

    Processing.initialize()
    plugins = str(profile / "python" / "plugins")
    sys.path.insert(0, plugins)
    qgis.utils.plugin_paths = [plugins]
    qgis.utils.updateAvailablePlugins()
    return application


def main():
    options = argparse.ArgumentParser()
    options.add_argument("--profiles-path", default=".")
    options.add_argument("--code")
    options.add_argument("--lang")
    asked = options.parse_known_args()[0]
    application = started(asked.profiles_path, asked.lang)
    qgis.utils.iface.mainWindow().show()
    if asked.code:
        code = compile(Path(asked.code).read_text(encoding="utf-8"), asked.code, "exec")
        QTimer.singleShot(0, lambda: exec(code, {"__name__": "__main__", "__file__": asked.code}))
    sys.exit(application.exec())


if __name__ == "__main__":
    main()
