"""Fields for the ranges of the chart: typed, and kept if asked."""

from qgis.PyQt.QtCore import pyqtSignal
from qgis.PyQt.QtWidgets import QCheckBox, QDoubleSpinBox, QHBoxLayout, QLabel, QWidget

from ...algorithms.language.translation import tr
from .axis_view import Ranges
from .flow import FlowLayout

_MOST = 1e9


class RangesPanel(QWidget):
    """From and to of chainages, heights, residuals and, where shown, the line; ``typed`` tells the Ranges a person has
    entered."""

    typed = pyqtSignal(object)
    keep_changed = pyqtSignal(bool)

    def __init__(self, parent=None):
        super().__init__(parent)
        layout = FlowLayout(self, 16)
        self._labels, self._fields, self._quiet = {}, {}, False
        for name in ("x", "y", "r", "l"):
            layout.addWidget(self._pair(name))
        self.show_line(False)
        self.keep = QCheckBox(tr("Keep these ranges for every axis"), self)
        self.keep.setToolTip(tr("Charts of different axes and surveys can then be compared at one scale."))
        self.keep.toggled.connect(self.keep_changed)
        layout.addWidget(self.keep)

    def _pair(self, name):
        box = QWidget(self)
        row = QHBoxLayout(box)
        row.setContentsMargins(0, 0, 0, 0)
        self._labels[name] = QLabel(box)
        row.addWidget(self._labels[name])
        self._fields[name] = [self._field(box) for _ in range(2)]
        self._labels[name].setBuddy(self._fields[name][0])
        row.addWidget(self._fields[name][0])
        row.addWidget(QLabel(tr("to"), box))
        row.addWidget(self._fields[name][1])
        return box

    @property
    def in_order(self):
        """The fields as the Tab key is to reach them."""
        return [field for pair in self._fields.values() for field in pair] + [self.keep]

    def show_line(self, shown):
        """Whether the range of the line is asked for."""
        self._labels["l"].parentWidget().setVisible(shown)

    def _field(self, parent):
        field = QDoubleSpinBox(parent)
        field.setRange(-_MOST, _MOST)
        field.setDecimals(3)
        # Only once a number is finished: '1' on the way to '1200' is no range.
        field.setKeyboardTracking(False)
        field.setMinimumWidth(field.fontMetrics().horizontalAdvance("−00000.000") + 28)
        field.setMaximumWidth(field.minimumWidth())
        field.valueChanged.connect(self._tell)
        return field

    def show_ranges(self, ranges, height_label, small_label, chainage_label):
        """Fill the fields; labels of the units."""
        titles = {
            "x": tr("Chainage ({})").format(chainage_label),
            "y": tr("Heights ({})").format(height_label),
            "r": tr("Residuals ({})").format(small_label),
            "l": tr("Line, + right ({})").format(small_label),
        }
        self._quiet = True
        for name, fields in self._fields.items():
            self._labels[name].setText(titles[name])
            for field, words in zip(fields, (tr("{}: from"), tr("{}: to"))):
                field.setAccessibleName(words.format(titles[name]))
            low, high = getattr(ranges, name)
            for field, value in zip(fields, (low, high)):
                field.setSingleStep(max(abs(high - low) / 20.0, 0.001))
                if not field.hasFocus():
                    field.setValue(value)
        self._quiet = False

    def _tell(self, _value):
        if self._quiet:
            return
        values = {name: tuple(field.value() for field in fields) for name, fields in self._fields.items()}
        if all(low < high for low, high in values.values()):
            self.typed.emit(Ranges(**values))
