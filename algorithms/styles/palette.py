"""One colour and dash for each thing, in map, strip, docks, sketches and pages; knows no host.

Orange and blue mean high and low and nothing else: they stay apart for every common kind of colour blindness. Lines are
told apart by their dashes alone, so that they can be read in grey; points by their shapes, which stand with the looks.
"""

from dataclasses import dataclass


@dataclass(frozen=True)
class Look:
    """How one thing is drawn: ``light`` its colour on paper and other light grounds, ``dark`` on a dark window and on
    imagery (hex, six digits); ``dash``: on, off, ... in widths of the line, () is solid; ``width``: points in a chart.
    """

    light: str
    dark: str
    dash: tuple = ()
    width: float = 1.4

    def on(self, is_dark):
        """Its colour on a ground that is dark or light."""
        return self.dark if is_dark else self.light

    def in_chart(self, is_dark=False):
        """Colour, dashes and width of its line as matplotlib takes them."""
        dashes = (0, self.dash) if self.dash else "solid"
        return {"color": self.on(is_dark), "linestyle": dashes, "linewidth": self.width}

    @property
    def millimetres(self):
        """Width of its line on the map."""
        return 0.75 * self.width

    @property
    def dash_millimetres(self):
        """Its dashes on the map; None where it is solid."""
        return tuple(part * self.millimetres for part in self.dash) or None


INK, PAPER = "#1b1b1f", "#ffffff"

# The four lines of a profile.
DESIGN = Look("#7b2fb8", "#d7a6ff", width=1.8)
LEVEL = Look("#557a00", "#b9d66a", (8.0, 2.0, 2.0, 2.0))
FLAT = Look("#6b7280", "#aeb4bf", (5.0, 3.0))
BUILT = Look(INK, "#e6e6e6", (1.0, 1.0), 1.0)
# What else heights are compared with on the page of testcurvature: a grade above the level surface, a free curvature.
GRADE = Look("#b5359c", "#f08fdc", (12.0, 3.0), 1.8)
FREE = Look("#3f3f46", "#c9c9d1", (6.0, 1.5, 1.5, 1.5, 1.5, 1.5), 1.2)

# Verdicts on stations. Within and the band of the tolerance are of one hue.
HIGH = Look("#c95a06", "#ff8a1f")
LOW = Look("#1f6feb", "#2f8fff")
WITHIN = Look("#258873", "#5fc4ae")
BAND = Look("#d3ebe5", "#2b443f")
UNJUDGED = Look("#52525b", "#9a9aa0")
SUSPECT = Look("#b0163a", "#ec3f62")
NOTICE = Look("#8a6d00", "#ffd23f")
# How a structure stands sideways, and nothing else: neither of a verdict's colours on heights nor solid as they are.
LINE = Look("#6b1f5c", "#ffb3e6", (3.0, 1.6), 1.6)
UNCHANGED = Look("#82828a", "#d9d9de")
# A station that is chosen, in docks and on the map.
CHOSEN = Look("#d4007a", "#ffe14d")
# A line that is tried in the profile; which of the three it is, its dashes say.
TRIED = Look("#b3006b", "#ff8fd0", width=1.7)

# Ground of a chart of the line, sideways, beside those of heights.
SIDEWAYS = "#f2eefa"
# Grid of a chart on paper.
GRID = "#e5e7eb"
# Border and ground of the strip's panel and its grid.
PANEL_INK = "#3c3c46"

# One after the other for the surveys of a comparison, whose marks differ too.
SURVEYS = (
    Look("#2d2d33", "#e6e6e6", width=1.3),
    Look("#b0336a", "#f08fb8", (6.0, 1.5), 1.3),
    Look("#1b8a6b", "#6fd0b4", (2.0, 1.0), 1.3),
    Look("#6b5a00", "#d8c25a", (8.0, 2.0, 1.0, 2.0), 1.3),
    Look("#7d7d86", "#b4b4bc", (4.0, 2.0), 1.3),
    Look("#8f1d1d", "#e88a8a", (1.0, 1.0), 1.3),
    Look("#4a7d2c", "#a8d48c", (10.0, 2.0), 1.3),
)
