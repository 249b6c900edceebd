"""The parameters of the review report."""

from qgis.core import (
    QgsProcessing,
    QgsProcessingParameterFeatureSource,
    QgsProcessingParameterNumber,
    QgsProcessingParameterRasterLayer,
    QgsProcessingParameterString,
)

from ..entry.parameter_builders import advanced, file_parameter, number_parameter, text_parameter
from ..entry.parameters import recorded_units, reviewed_stations
from ..language.translation import tr, translatable

_SOURCE = QgsProcessing.SourceType
# The title block: key, label, help.
TITLE_BLOCK = (
    ("PROJECT", translatable("Project"), translatable("Name of the project, for the title block.")),
    (
        "STRUCTURE",
        translatable("Structure"),
        translatable("Name of the structure, for the title block. Empty: the names of its axes."),
    ),
    ("DATE", translatable("Date of the report"), translatable("As it is to be printed. Empty: today, year-month-day.")),
    (
        "PREPARED_BY",
        translatable("Prepared by"),
        translatable("Person responsible for the report; a line for the signature is left."),
    ),
    (
        "CHECKED_BY",
        translatable("Checked by"),
        translatable("Person who has checked it; a line for the signature is left beside it."),
    ),
)


def _source(key, label, text, kind, optional=True):
    parameter = QgsProcessingParameterFeatureSource(key, label, [kind], optional=optional)
    parameter.setHelp(text)
    return parameter


def _layers():
    imagery = QgsProcessingParameterRasterLayer("IMAGERY", tr("Imagery"), optional=True)
    imagery.setHelp(tr("Raster that the map lies on. Empty: a map without background."))
    return [
        _source("AXIS", tr("Axis"), tr("Line of the structure, drawn on the map."), _SOURCE.TypeVectorLine),
        imagery,
        _source(
            "DECISIONS",
            tr("Decisions"),
            tr("Table with the fields axis, station, decision, note, by, at, as the review dock keeps it."),
            _SOURCE.TypeVector,
        ),
        _source(
            "TESTED",
            tr("Tested stations"),
            tr("Output of 'Fit a straight line or plane': its test values w and flags, of heights and line."),
            _SOURCE.TypeVector,
        ),
        _source(
            "REFERENCE",
            tr("Reference"),
            tr("References of 'Fit a straight line or plane': straightness and tangent point."),
            _SOURCE.TypeVector,
        ),
        _source(
            "CURVATURE", tr("Curvature of each axis"), tr("Table of 'Test which shape was built'."), _SOURCE.TypeVector
        ),
        advanced(
            _source(
                "SUMMARY",
                tr("Summary of each axis"),
                tr(
                    "Summary of 'Design heights and residuals'. Only needed where the stations do not carry the record "
                    "of their run."
                ),
                _SOURCE.TypeVector,
            )
        ),
    ]


def _sigma():
    parameter = QgsProcessingParameterNumber(
        "SIGMA", tr("Standard deviation of a height"), QgsProcessingParameterNumber.Type.Double, optional=True
    )
    parameter.setHelp(
        tr(
            "One value for all stations, in the unit of heights; the certainty of the verdict rests on it. With "
            "0.003 in metres a residual of 8 mm is within 10 mm with a probability of 75 %. Empty: the stations' "
            "field 'sd', else that of the run that tested them, else no certainty is given."
        )
    )
    parameter.setMinimum(0.0)
    return parameter


def _of_line():
    """Numbers for stations that were judged by line."""
    yield number_parameter(
        "SIGMA_LINE",
        tr("Standard deviation of a lateral position"),
        tr(
            "For stations judged in line: one value for all, in the unit of heights; the certainty of the line's "
            "verdict rests on it. With 0.003 in metres a departure of 8 mm is within 10 mm with a probability of 75 "
            "%. Empty: that of the run that tested the stations, else no certainty is given."
        ),
        None,
        0.0,
    )
    yield number_parameter(
        "RADIAL_TOLERANCE",
        tr("Radial tolerance"),
        tr(
            "For stations judged in line: greatest departure in height and line together, √(v² + l²), that counts as "
            "within, in the unit of heights: 8 mm high and 6 mm to the right are 10 mm together. Empty: they are "
            "judged one by one."
        ),
        None,
        0.0,
    )


def _titles():
    for key, label, text in TITLE_BLOCK:
        parameter = QgsProcessingParameterString(key, tr(label), defaultValue=None, optional=True)
        parameter.setHelp(tr(text))
        yield parameter


def report_parameters():
    """Fresh parameters of the entry, in the order of its form."""
    return [
        reviewed_stations(),
        *_layers(),
        *_titles(),
        _sigma(),
        *map(advanced, _of_line()),
        *recorded_units(),
        file_parameter(
            "HTML",
            tr("Report for the screen"),
            tr("One HTML file that opens offline and prints well."),
            tr("HTML files (*.html)"),
            True,
        ),
        file_parameter("PDF", tr("Report for paper"), tr("A PDF of A4 pages."), tr("PDF files (*.pdf)"), True),
        advanced(
            text_parameter(
                "SLIDE_AXIS",
                tr("Axis on the slide"),
                tr("Whose profile the slide shows. Empty: the axis of the greatest residual."),
            )
        ),
        file_parameter(
            "SLIDE",
            tr("One slide"),
            tr(
                "One picture, 16:9, for a talk or a page: map, profile with the straight line, the level surface and "
                "the line with no curvature, the verdict in a sentence, caution. The ending says which: a PNG of 3840 "
                "by 2160 pixels, or a PDF."
            ),
            tr("PNG pictures (*.png);;PDF files (*.pdf)"),
        ),
    ]
