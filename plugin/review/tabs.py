"""Docks on the right as tabs: one under the other they would need more height than a small screen has."""

from qgis.PyQt.QtCore import Qt
from qgis.PyQt.QtWidgets import QDockWidget


def tabify(window, dock):
    """Put ``dock`` of ``window`` behind the same tabs as the plugin's other docks on the right, in front of them."""
    right = Qt.DockWidgetArea.RightDockWidgetArea
    for other in window.findChildren(QDockWidget):
        ours = other is not dock and other.objectName().startswith("tautline")
        if ours and other.isVisible() and not other.isFloating() and window.dockWidgetArea(other) == right:
            window.tabifyDockWidget(other, dock)
            return
