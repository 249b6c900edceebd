"""The list of flagged stations as the host's views take it."""

import numpy as np
from qgis.PyQt.QtCore import QAbstractTableModel, QModelIndex, Qt

from ...algorithms.language.decision_words import decision_label
from ...algorithms.language.height_text import amounts_for, side_text
from ...algorithms.language.shown_stations import shown_station
from ...algorithms.language.translation import tr
from ...algorithms.language.units import Units
from ..review.station_texts import doubt_in_line, why_flagged
from .decision_store import key_of

STATION, RESIDUAL, WHY, DECISION, LATERAL = range(5)
OF_HEIGHTS = (STATION, RESIDUAL, WHY, DECISION)
WITH_LINE = (STATION, RESIDUAL, LATERAL, WHY, DECISION)


class FlaggedModel(QAbstractTableModel):
    """Rows of Stations that are flagged or decided on; ``decisions``: {key: Decision}."""

    def __init__(self, parent=None):
        super().__init__(parent)
        self.stations, self.rows, self.decisions, self._axes = None, np.zeros(0, int), {}, []
        self._moved, self.columns = np.zeros(0, bool), OF_HEIGHTS

    def show(self, stations, rows, decisions):
        self.beginResetModel()
        self.stations, self.rows, self.decisions = stations, rows, decisions
        self._axes = stations.axes if stations is not None else []
        self.columns = WITH_LINE if stations is not None and stations.has_line else OF_HEIGHTS
        self._moved = stations.moved if stations is not None else np.zeros(0, bool)
        self.endResetModel()

    def set_decisions(self, decisions):
        """Other decisions on the same stations: the list and its order stay."""
        self.decisions = decisions
        if len(self.rows):
            self.dataChanged.emit(self.index(0, 0), self.index(len(self.rows) - 1, len(self.columns) - 1))

    def decision_of(self, row):
        """Decision on a row of Stations, None without."""
        if not self.decisions:
            return None
        return self.decisions.get(key_of(self.stations.axis[row], self.stations.station[row]))

    def rowCount(self, parent=QModelIndex()):  # noqa: N802,B008 - the host's name and default
        return 0 if parent.isValid() else len(self.rows)

    def columnCount(self, parent=QModelIndex()):  # noqa: N802,B008 - the host's name and default
        return 0 if parent.isValid() else len(self.columns)

    def headerData(self, section, orientation, role=Qt.ItemDataRole.DisplayRole):  # noqa: N802 - the host's name
        if orientation != Qt.Orientation.Horizontal or role != Qt.ItemDataRole.DisplayRole:
            return None
        return (tr("Station"), tr("Residual"), tr("Why"), tr("Decision"), tr("Lateral"))[self.columns[section]]

    def data(self, index, role=Qt.ItemDataRole.DisplayRole):
        stations, row = self.stations, int(self.rows[index.row()])
        column = self.columns[index.column()]
        if role == Qt.ItemDataRole.TextAlignmentRole and column in (RESIDUAL, LATERAL):
            flags = Qt.AlignmentFlag.AlignRight | Qt.AlignmentFlag.AlignVCenter
            return int(getattr(flags, "value", flags))  # Qt 6 has enumerations with a value
        if role == Qt.ItemDataRole.ToolTipRole and column == DECISION:
            decision = self.decision_of(row)
            return decision.note or None if decision is not None else None
        if role != Qt.ItemDataRole.DisplayRole:
            return None
        if column == LATERAL:
            lateral, unit = stations.heights["lateral"][row], stations.height_unit
            return side_text(lateral, Units(unit, unit)) if np.isfinite(lateral) else ""
        if column == DECISION:
            decision = self.decision_of(row)
            return "" if decision is None else decision_label(decision.decision)
        residual = stations.heights["residual"][row]
        several, station = len(self._axes) > 1, shown_station(str(stations.station[row]))
        return (
            f"{stations.axis[row]} {station}" if several else station,
            amounts_for(stations.height_unit).with_unit(residual, True) if np.isfinite(residual) else "",
            why_flagged(
                stations.status[row],
                stations.flag[row] if stations.suspected[row] else "",
                self._moved[row],
                stations.side[row],
                doubt_in_line(stations, row),
            ),
        )[column]
