"""The first two questions: where the structure runs, and where its heights are."""

from pathlib import Path

from qgis.core import QgsFieldProxyModel, QgsProject, QgsVectorLayer, QgsWkbTypes
from qgis.gui import QgsFieldComboBox
from qgis.PyQt.QtCore import pyqtSignal
from qgis.PyQt.QtWidgets import QComboBox, QFileDialog, QGridLayout, QHBoxLayout, QLineEdit, QPushButton, QRadioButton

from ...algorithms.core.data_check import guessed_column, guessed_unit
from ...algorithms.language.translation import tr
from ...algorithms.language.units import said_units
from .layer_box import KINDS_OF_LAYERS, LayerBox, is_result
from .widgets import Answer, Question

_LINE, _POINT, _NONE = (
    QgsWkbTypes.GeometryType.LineGeometry,
    QgsWkbTypes.GeometryType.PointGeometry,
    QgsWkbTypes.GeometryType.NullGeometry,
)
_COLUMNS = ("station", "height", "offset", "axis", "undulation")


def choice_box(options):
    """A box with (value, text) options."""
    box = QComboBox()
    for value, text in options:
        box.addItem(text, value)
    box.setMinimumContentsLength(8)
    box.setSizeAdjustPolicy(QComboBox.SizeAdjustPolicy.AdjustToMinimumContentsLengthWithIcon)
    return box


def _listed_layers():
    """The project's layers as the tree shows them, the topmost first, and those that it does not show."""
    layers = [node.layer() for node in QgsProject.instance().layerTreeRoot().findLayers()]
    layers = [layer for layer in layers if layer is not None]
    shown = {layer.id() for layer in layers}
    return layers + [layer for layer in QgsProject.instance().mapLayers().values() if layer.id() not in shown]


def _is_axis(layer):
    """Whether the layer may be what a new run has its axes from."""
    return isinstance(layer, QgsVectorLayer) and layer.geometryType() == _LINE and not is_result(layer)


def _has_heights(layer):
    """Whether the layer may be what a new run has its heights from: by its columns, or points by their Z."""
    if not isinstance(layer, QgsVectorLayer) or layer.geometryType() not in (_POINT, _NONE):
        return False
    names = [field.name() for field in layer.fields()]
    if "residual" in names:
        # Results have heights too, but a new run begins with what they came from.
        return False
    if layer.isSpatial() and QgsWkbTypes.hasZ(layer.wkbType()) and not is_result(layer):
        return True
    return bool(guessed_column(names, "height") and (layer.isSpatial() or guessed_column(names, "station")))


class StructureQuestion(Question):
    """A line layer, or a line drawn from the first to the last station."""

    answered = pyqtSignal()

    def __init__(self, parent=None):
        super().__init__(1, tr("Structure"), tr("Where does it run?"), parent)
        self.by_layer, self.by_stations = (
            QRadioButton(text) for text in (tr("Along a line layer"), tr("From the first to the last station"))
        )
        self.by_layer.setChecked(True)
        self.by_stations.setToolTip(
            tr("Where there is no line layer: points with heights are enough, and a line layer is made from them.")
        )
        self.box = LayerBox(KINDS_OF_LAYERS.LineLayer, lambda layer: not is_result(layer))
        self.answer = Answer(
            tr("Axis layer"),
            self.box,
            tr("Line of the structure in plan, one line for each axis, drawn in the direction of rising chainage."),
        )
        for widget in (self.by_layer, self.answer, self.by_stations):
            self.body.addWidget(widget)
        self.by_layer.toggled.connect(self._changed)
        self.box.layerChanged.connect(self._changed)

    def _changed(self, *_):
        self.answer.setVisible(self.by_layer.isChecked())
        self.answered.emit()

    def propose(self):
        """Choose what a new project suggests: its topmost line layer."""
        self.box.update_layers()
        self.box.setLayer(next((layer for layer in _listed_layers() if _is_axis(layer)), None))
        self.by_layer.setChecked(True)

    def propose_of(self, layers):
        """Choose one of these new layers where nothing is chosen yet."""
        if self.by_layer.isChecked() and not self.box.layer_id():
            self.box.setLayer(next((layer for layer in layers if _is_axis(layer)), None))

    def values(self):
        drawn = self.by_stations.isChecked()
        return {"drawn": drawn, "axis": "" if drawn else self.box.layer_id()}

    def fill(self, settings):
        (self.by_stations if settings.drawn else self.by_layer).setChecked(True)
        self.box.setLayer(QgsProject.instance().mapLayer(settings.axis))


class HeightsQuestion(Question):
    """A height list or points, their columns, unit and height system."""

    answered = pyqtSignal()

    def __init__(self, parent=None):
        question = tr("Where are the surveyed heights, and what are they measured from?")
        super().__init__(2, tr("Heights"), question, parent)
        self.box = LayerBox(KINDS_OF_LAYERS.PointLayer | KINDS_OF_LAYERS.NoGeometry)
        self.open_button = QPushButton(tr("Open a file…"))
        self.open_button.setToolTip(tr("A height list as CSV file or spreadsheet, or a layer with points."))
        self.answer = Answer(
            tr("Heights from"),
            self.box,
            tr("A height list with a station and a height in each row, or points with heights."),
        )
        row = QHBoxLayout()
        row.addWidget(self.answer, 1)
        self.body.addLayout(row)
        self.typed_button = QPushButton(tr("Type or paste…"))
        self.typed_button.setToolTip(tr("For heights read off drawings: a small table, checked line by line."))
        sources = QHBoxLayout()
        sources.addWidget(self.open_button)
        sources.addWidget(self.typed_button)
        self.answer.layout().insertLayout(2, sources)
        self.columns = {kind: QgsFieldComboBox() for kind in _COLUMNS}
        for box in self.columns.values():
            box.setAllowEmptyFieldName(True)
        self.columns["undulation"].setFilters(QgsFieldProxyModel.Filter.AllTypes)
        units = list(said_units().items())
        self.height_unit = choice_box(units)
        self.chainage_unit = choice_box([("", tr("the same unit")), *units])
        self.system = choice_box(
            [
                ("unknown", tr("above sea level, nothing more known")),
                ("field", tr("above sea level, undulations in a column")),
                ("grid", tr("above sea level, undulations by EGM96")),
                ("constant", tr("above sea level, one undulation for all")),
                ("ellipsoidal", tr("above the ellipsoid, as GNSS gives them")),
            ]
        )
        self.undulation_value = QLineEdit()
        self._lay_out()
        self.box.layerChanged.connect(self._layer_changed)
        self.open_button.clicked.connect(self.open_file)
        for box in self.columns.values():
            box.fieldChanged.connect(self._changed)
        for box in (self.height_unit, self.chainage_unit, self.system):
            box.currentIndexChanged.connect(self._changed)
        self.undulation_value.textChanged.connect(self._changed)
        self._show_what_counts()

    def _lay_out(self):
        made = {
            "heights": self.answer,
            "station_field": Answer(
                tr("Station"), self.columns["station"], tr("Column with the station, 12+50 or 1+250, or a distance.")
            ),
            "height_field": Answer(
                tr("Height"), self.columns["height"], tr("Column with the as-built height. Empty: the Z of the points.")
            ),
            "offset_field": Answer(
                tr("Offset"), self.columns["offset"], tr("Distance from the axis, right positive. Empty: on the axis.")
            ),
            "axis_name_field": Answer(
                tr("Name of the axis"),
                self.columns["axis"],
                tr("Column that says which axis a row belongs to. Points without one belong to the nearest axis."),
            ),
            "height_unit": Answer(
                tr("Heights are in"), self.height_unit, tr("Tolerance and results are in this unit too.")
            ),
            "chainage_unit": Answer(tr("Distances are in"), self.chainage_unit, tr("Stations and offsets.")),
            "undulation": Answer(
                tr("Heights are"),
                self.system,
                tr(
                    "What they are measured from. The undulation is the height of the geoid, that is of mean sea "
                    "level, above the ellipsoid."
                ),
            ),
            "undulation_field": Answer(
                tr("Undulation"),
                self.columns["undulation"],
                tr("Column with the undulation of each station, in the unit of heights."),
            ),
            "undulation_value": Answer(
                tr("Undulation"), self.undulation_value, tr("One undulation for all stations, in the unit of heights.")
            ),
        }
        self.answers = made
        grid = QGridLayout()
        grid.setHorizontalSpacing(10)
        grid.setVerticalSpacing(6)
        for column in (0, 1):
            grid.setColumnStretch(column, 1)
        for place, key in enumerate(
            ("station_field", "height_field", "offset_field", "axis_name_field", "height_unit", "chainage_unit")
        ):
            grid.addWidget(made[key], place // 2, place % 2)
        for row, key in enumerate(("undulation", "undulation_field", "undulation_value"), 3):
            grid.addWidget(made[key], row, 0, 1, 2)
        self.body.addLayout(grid)

    # --- what changes

    def is_list(self):
        layer = self.box.currentLayer()
        return layer is not None and not layer.isSpatial()

    def _show_what_counts(self):
        layer, system = self.box.currentLayer(), self.system.currentData()
        for key in ("station_field", "height_field", "offset_field", "axis_name_field"):
            self.answers[key].setVisible(layer is not None)
        # Points stand where they stand: only their height and their axis are asked.
        for key in ("station_field", "offset_field"):
            self.answers[key].setVisible(layer is not None and self.is_list())
        self.answers["undulation_field"].setVisible(system == "field")
        self.answers["undulation_value"].setVisible(system == "constant")

    def _changed(self, *_):
        self._show_what_counts()
        self.answered.emit()

    def _layer_changed(self, layer):
        for box in self.columns.values():
            box.blockSignals(True)
            box.setLayer(layer)
        names = [field.name() for field in layer.fields()] if layer is not None else []
        for kind, box in self.columns.items():
            box.setField(guessed_column(names, kind))
            box.blockSignals(False)
        self._guess(names)
        self._changed()

    def _guess(self, names):
        """Units and height system that the columns' names suggest; said in the boxes, where they can be changed."""
        unit = guessed_unit(self.columns["height"].currentField())
        if unit:
            self.height_unit.setCurrentIndex(self.height_unit.findData(unit))
        self.system.setCurrentIndex(self.system.findData("field" if guessed_column(names, "undulation") else "unknown"))

    def open_file(self):
        """Ask for a file and choose it; it joins the project."""
        filters = ";;".join(
            (tr("Height lists and layers (*.csv *.txt *.xlsx *.ods *.gpkg *.shp *.geojson)"), tr("All files (*)"))
        )
        home = QgsProject.instance().homePath()
        path, _kind = QFileDialog.getOpenFileName(self, tr("Height list or points"), home, filters)
        if path:
            self.take_file(path)

    def take_file(self, path):
        """Add the file as a layer and choose it; say so where it cannot be read."""
        layer = QgsVectorLayer(path, Path(path).stem, "ogr")
        if not layer.isValid():
            self.answer.say(tr("The file '{}' cannot be read as a table or layer.").format(Path(path).name))
            return
        self.answer.say("")
        QgsProject.instance().addMapLayer(layer)
        self.box.setLayer(layer)

    def take_list(self, layer, units):
        """Choose a typed list in these Units."""
        self.box.setLayer(layer)
        self.height_unit.setCurrentIndex(self.height_unit.findData(units.height_name))
        same = units.chainage_name == units.height_name
        self.chainage_unit.setCurrentIndex(self.chainage_unit.findData("" if same else units.chainage_name))
        self._changed()

    def propose(self, active):
        """Choose what a new project suggests: the ``active`` layer, else one with heights by its columns or its Z."""
        layers = [active, *_listed_layers()]
        self.box.setLayer(next((layer for layer in layers if layer is not None and _has_heights(layer)), None))

    def propose_of(self, layers):
        """Choose one of these new layers where nothing is chosen yet."""
        if not self.box.layer_id():
            self.box.setLayer(next((layer for layer in layers if _has_heights(layer)), None))

    def values(self):
        found = {
            key: self.columns[kind].currentField()
            for key, kind in (
                ("station_field", "station"),
                ("height_field", "height"),
                ("offset_field", "offset"),
                ("axis_name_field", "axis"),
                ("undulation_field", "undulation"),
            )
        }
        return {
            "heights": self.box.layer_id(),
            "height_unit": self.height_unit.currentData(),
            "chainage_unit": self.chainage_unit.currentData(),
            "undulation": self.system.currentData(),
            "undulation_value": self.undulation_value.text().strip(),
            **found,
        }

    def fill(self, settings):
        self.box.setLayer(QgsProject.instance().mapLayer(settings.heights))
        for kind, name in (
            ("station", settings.station_field),
            ("height", settings.height_field),
            ("offset", settings.offset_field),
            ("axis", settings.axis_name_field),
            ("undulation", settings.undulation_field),
        ):
            self.columns[kind].setField(name)
        for box, value in (
            (self.height_unit, settings.height_unit),
            (self.chainage_unit, settings.chainage_unit),
            (self.system, settings.undulation),
        ):
            box.setCurrentIndex(max(box.findData(value), 0))
        self.undulation_value.setText(settings.undulation_value)
