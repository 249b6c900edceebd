"""A page of a dock that may be lower than what it holds: what does not fit is scrolled to."""

from qgis.PyQt.QtCore import Qt
from qgis.PyQt.QtWidgets import QFrame, QScrollArea


def scrolled(page, parent):
    """A QScrollArea in ``parent`` with ``page``, as wide as itself: a dock's least height no longer grows with what is
    in it, and on a small screen the window still fits."""
    area = QScrollArea(parent)
    area.setFrameShape(QFrame.Shape.NoFrame)
    area.setWidgetResizable(True)
    area.setHorizontalScrollBarPolicy(Qt.ScrollBarPolicy.ScrollBarAsNeeded)
    # The keys are the page's own.
    area.setFocusPolicy(Qt.FocusPolicy.NoFocus)
    area.setWidget(page)
    # The dock has one background, whatever the theme makes of the insides of a scrolled area.
    area.viewport().setAutoFillBackground(False)
    page.setAutoFillBackground(False)
    return area
