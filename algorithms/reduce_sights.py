"""Toolbox entry reducesights: sights of a field book become height differences (method page 8)."""

from qgis.core import QgsProcessing

from .entry import parameter_builders as build
from .entry import parameters as p
from .entry.base import ToolboxEntry
from .language.translation import tr
from .levelling import parameters as lp


class ReduceSights(ToolboxEntry):
    """A table of sights in; height differences with their standard deviations out."""

    ID = "reducesights"
    TITLE = "Reduce sights for curvature and refraction"
    GROUP, GROUP_ID = "Heights", "heights"
    TAGS = (
        "levelling",
        "sight",
        "zenith angle",
        "total station",
        "refraction",
        "curvature",
        "reciprocal",
        "two-peg test",
        "collimation",
        "field book",
    )
    HELP = (
        "Turns the rows of a field book into height differences: sights of a theodolite or total station "
        "(distance, zenith or vertical angle, instrument and target heights), setups of a level (back and fore "
        "sight, with their lengths), or a levelling book with one row for each staff point.\n\n"
        "A sight of length D is corrected by (1 \u2212 k) D\u00b2/2R, D at the instrument: 68 mm at 1 km with k = "
        "0.13; a distance that is an arc on the ellipsoid has a formula of its own, and on steep lines you say which "
        "of the two it is. A setup of a level is corrected by that of its fore sight less that of its back sight, "
        "and for the collimation that a two-peg test gives. Sights both ways between two points are combined: "
        "curvature, refraction and collimation cancel, and the coefficient k that they imply is reported. A "
        "level counts as sighting both ways where its fore sight is more than five times its back sight.\n\n"
        "Standard deviations come by propagation from what you state of the instruments and of k; nothing is "
        "assumed. Setups of one back sight with several fore sights share its error, which is not followed up.\n\n"
        "A row that cannot be used goes to REJECTED with its row number and the reason. The output fits 'Adjust "
        "levelled height differences'. Results are for review; a licensed surveyor or engineer decides."
    )

    def entry_parameters(self):
        return [
            lp.sights(),
            *lp.sight_fields(),
            p.height_unit(),
            lp.angle_unit(),
            lp.sight_refraction(),
            *lp.sight_sigmas(),
            lp.distance_unit(),
            lp.refraction_of_days(),
            lp.refraction_solved(),
            lp.collimation(),
            lp.peg_test(),
            lp.horizontal_at(),
            lp.site_height(),
            lp.latitude(),
            lp.sight_radius(),
            build.advanced(lp.named_stations()),
            lp.station_name_field(),
            p.sink(
                "OUTPUT",
                tr("Height differences"),
                tr(
                    "A row for each line: corrected height difference, standard deviation, and what "
                    "was added for curvature, 68 mm at 1 km with k = 0.13."
                ),
                QgsProcessing.SourceType.TypeVector,
            ),
            p.table(
                "REJECTED",
                tr("Rejected rows"),
                tr("Rows that could not be used, with their number, counted from 1, and the reason."),
            ),
        ]

    def result_numbers(self):
        return {
            "COUNT": tr("Height differences"),
            "REJECTED_COUNT": tr("Rejected rows"),
            "PAIRS": tr("Reciprocal pairs"),
            "K_SOLVED": tr("Mean k of the reciprocal sights"),
        }

    def computing(self):
        from .levelling.sights_run import SightsRun

        return SightsRun
