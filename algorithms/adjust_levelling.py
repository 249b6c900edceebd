"""Toolbox entry adjustlevelling: levelled height differences become heights with standard deviations."""

from .entry import parameter_builders as build
from .entry import parameters as p
from .entry.base import ToolboxEntry
from .language.translation import tr
from .levelling import parameters as lp


class AdjustLevelling(ToolboxEntry):
    """Levelled lines and benchmarks in; adjusted heights, tested lines and misclosures out."""

    ID = "adjustlevelling"
    TITLE = "Adjust levelled height differences"
    GROUP, GROUP_ID = "Heights", "heights"
    TAGS = ("levelling", "least squares", "network adjustment", "benchmark", "misclosure", "loop", "network", "blunder")
    HELP = (
        "Adjusts levelled height differences as one net by least squares. Benchmarks are held fixed, or take part "
        "with their own standard deviation; a free adjustment holds one point only and shows benchmarks that have "
        "moved.\n\n"
        "Before it, sections levelled twice and loops are added up and compared with a class of levelling, n times "
        "the square root of the length in kilometres. After it, w is each line's residual over its standard "
        "deviation: beyond 3.29 a blunder is suspected. The smallest blunder that would be found, with a probability "
        "of 80 %, tells how well the net checks the line. A line that no other checks has no w. Nothing is left out "
        "of the adjustment.\n\n"
        "Parts of the net that reach no benchmark get no heights, and are named. Stations get their heights by name: "
        "the fields height and sd are those that 'Fit a straight line or plane' looks for. COVARIANCE keeps what the "
        "heights share.\n\n"
        "Results are for review; field work follows local codes, and a licensed surveyor or engineer decides."
    )

    def entry_parameters(self):
        fields = lp.line_fields()
        return [
            lp.level_lines(),
            *fields,
            p.height_unit(),
            lp.benchmarks(),
            lp.free_adjustment(),
            *lp.line_sigmas(),
            lp.levelling_class(),
            lp.named_stations(),
            *lp.benchmark_fields(),
            lp.station_name_field(),
            build.advanced(lp.weights()),
            build.advanced(lp.limit_factor()),
            lp.distance_unit(),
            lp.free_point(),
            p.gravity(
                tr(
                    "Corrects each line by the latitudes of its ends, which STATIONS or benchmarks that are points "
                    "must hold. Empty: none."
                )
            ),
            p.datum_height(),
            p.table(
                "OUTPUT",
                tr("Adjusted heights"),
                tr(
                    "A row for each point: adjusted height, standard deviation, and for a benchmark "
                    "adjusted less given height."
                ),
                optional=False,
            ),
            lp.stations_with_heights(),
            p.table(
                "LINES",
                tr("Adjusted lines"),
                tr(
                    "A row for each line: v is observed less adjusted, w is v over its standard deviation, a blunder "
                    "is suspected beyond 3.29."
                ),
            ),
            p.table(
                "MISCLOSURES",
                tr("Misclosures"),
                tr(
                    "Sections levelled twice and loops with what they add up to, and the limit of "
                    "the class: 8 mm over 4 km where n is 4."
                ),
            ),
            lp.covariance_table(),
            lp.levelling_summary(),
        ]

    def result_numbers(self):
        return {
            "COUNT": tr("Adjusted heights"),
            "FREEDOM": tr("Degrees of freedom"),
            "VARIANCE_FACTOR": tr("Variance factor"),
            "SUSPECTED": tr("Suspected blunders"),
            "BEYOND": tr("Misclosures beyond the limit"),
        }

    def computing(self):
        from .levelling.net_run import NetRun

        return NetRun
