"""Small pictures of the designs: the level surface as a bowed dash-dotted line, the structure as a solid one."""

from qgis.PyQt.QtCore import QPointF, QSize, Qt
from qgis.PyQt.QtGui import QColor, QPainter, QPainterPath, QPen
from qgis.PyQt.QtWidgets import QSizePolicy, QWidget

from ...algorithms.styles.palette import DESIGN, LEVEL

_BOW = 0.55


def _level(x):
    """Height of the level surface at x, -1 to 1: it falls away on both sides of the middle."""
    return -_BOW * x * x


# Height of the structure over the same x, and the x of its controls.
_SHAPES = {
    "chord": (lambda x: -_BOW * 0.64, (-0.8, 0.8)),
    "tangent": (lambda x: 0.0, (0.0,)),
    "inclined": (lambda x: _level(-0.8) + 0.1 + 0.42 * (x + 0.8), (-0.8,)),
    "reference": (lambda x: -0.12 + 0.16 * x, ()),
    "level": (lambda x: _level(x) + 0.22, (0.0,)),
    "grade": (lambda x: _level(x) + 0.1 + 0.26 * (x + 0.8), (-0.8, 0.8)),
}
_SCATTER = ((-0.75, 0.10), (-0.45, -0.09), (-0.12, 0.08), (0.2, -0.08), (0.5, 0.09), (0.78, -0.06))


class Sketch(QWidget):
    """The picture of one design, drawn at any scale and in any theme."""

    def __init__(self, design, parent=None):
        super().__init__(parent)
        self._design = design
        self.setSizePolicy(QSizePolicy.Policy.Fixed, QSizePolicy.Policy.Fixed)

    def sizeHint(self):  # noqa: N802 - the host's name
        unit = self.fontMetrics().height()
        return QSize(int(4.6 * unit), int(2.2 * unit))

    def _at(self, x, height):
        wide, high = self.width(), self.height()
        return QPointF(wide * (0.5 + 0.46 * x), high * (0.42 - 0.72 * height))

    def _curve(self, heights, first=-1.0, last=1.0):
        path = QPainterPath(self._at(first, heights(first)))
        for k in range(1, 33):
            x = first + (last - first) * k / 32.0
            path.lineTo(self._at(x, heights(x)))
        return path

    def paintEvent(self, _event):  # noqa: N802 - the host's name
        painter = QPainter(self)
        painter.setRenderHint(QPainter.RenderHint.Antialiasing)
        painter.setOpacity(1.0 if self.isEnabled() else 0.4)
        stroke = max(1.4, self.height() / 18.0)
        is_dark = self.palette().window().color().lightness() < 128
        level = QPen(QColor(LEVEL.on(is_dark)), stroke, Qt.PenStyle.CustomDashLine, Qt.PenCapStyle.FlatCap)
        level.setDashPattern(list(LEVEL.dash))
        painter.setPen(level)
        painter.drawPath(self._curve(_level))
        heights, controls = _SHAPES[self._design]
        painter.setPen(QPen(QColor(DESIGN.on(is_dark)), 1.8 * stroke, Qt.PenStyle.SolidLine, Qt.PenCapStyle.RoundCap))
        painter.drawPath(self._curve(heights, -0.8, 0.8))
        painter.setPen(QPen(self.palette().window().color(), 0.8 * stroke))
        painter.setBrush(self.palette().windowText().color())
        spots = (
            [(x, heights(x) + off) for x, off in _SCATTER]
            if self._design == "reference"
            else [(x, heights(x)) for x in controls]
        )
        for x, height in spots:
            painter.drawEllipse(self._at(x, height), 1.9 * stroke, 1.9 * stroke)
        painter.end()
