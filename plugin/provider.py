"""The toolbox entries, as an explicit tuple."""

from pathlib import Path

from qgis.core import QgsProcessingProvider
from qgis.PyQt.QtGui import QIcon

from ..algorithms.adjust_levelling import AdjustLevelling
from ..algorithms.compare_surveys import CompareSurveys
from ..algorithms.convert_heights import ConvertHeights
from ..algorithms.design_heights import DesignHeights
from ..algorithms.draw_deviations import DrawDeviations
from ..algorithms.fit_reference import FitReference
from ..algorithms.generate_stations import GenerateStations
from ..algorithms.measure_stations import MeasureStations
from ..algorithms.place_stations import PlaceStations
from ..algorithms.reduce_sights import ReduceSights
from ..algorithms.review_report import ReviewReport
from ..algorithms.schedule_adjustments import ScheduleAdjustments
from ..algorithms.test_curvature import TestCurvature

ENTRIES = (
    PlaceStations,
    GenerateStations,
    MeasureStations,
    ConvertHeights,
    ReduceSights,
    AdjustLevelling,
    DesignHeights,
    FitReference,
    TestCurvature,
    DrawDeviations,
    CompareSurveys,
    ScheduleAdjustments,
    ReviewReport,
)
ICON = str(Path(__file__).parent / "icons" / "tautline.svg")


class TautlineProvider(QgsProcessingProvider):
    """Provider 'tautline'."""

    def id(self):
        return "tautline"

    def name(self):
        return "Tautline"

    def longName(self):  # noqa: N802 - the host's name
        return self.tr("Tautline: long structures and the Earth's curvature")

    def icon(self):
        return QIcon(ICON)

    def svgIconPath(self):  # noqa: N802 - the host's name
        return ICON

    def loadAlgorithms(self):  # noqa: N802 - the host's name
        for entry in ENTRIES:
            self.addAlgorithm(entry())
