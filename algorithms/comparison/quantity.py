"""What of two surveys is compared: heights, or the line, how far the stations stand beside it."""

from dataclasses import dataclass

from ..core.comparison import MOVED_SIDEWAYS, MOVED_UP

# Fields of heights, and those that say the same of the line: in the stations and changes, and of each axis.
_STATIONS = {
    "h_first": "lat_first",
    "h_last": "lat_last",
    "change": "lat_change",
    "sd_change": "sd_lat",
    "ratio": "lat_ratio",
    "verdict": "lat_verd",
    "rate": "lat_rate",
    "sd_rate": "sd_lrate",
    "common": "lat_common",
    "bending": "lat_bend",
    "sd_bend": "sd_lbend",
    "bend_verd": "lbend_verd",
}
_MOTIONS = {
    "number": "lat_number",
    "stable": "lat_stable",
    "shift": "lat_shift",
    "sd_shift": "sd_lshift",
    "tilt": "lat_turn",
    "sd_tilt": "sd_lturn",
    "rms": "lat_rms",
    "right": "right",
    "left": "left",
    "possible": "lat_poss",
    "bent": "lat_bent",
}


@dataclass(frozen=True)
class Quantity:
    """``up``, ``down``: verdicts on a positive and a negative change beyond doubt; ``sideways``: True for the line;
    ``own_lines``: of the line, True where each survey has a line of its own, so that shift and rotation between two
    surveys are those of the lines."""

    up: str
    down: str
    sideways: bool = False
    own_lines: bool = False

    def renamed(self, columns, motions=False):
        """Columns {name of heights: values} by the names of this quantity; those that the line lacks go."""
        names = _MOTIONS if motions else _STATIONS
        return {names[name]: values for name, values in columns.items() if name in names} if self.sideways else columns


HEIGHTS = Quantity(*MOVED_UP)


def of_line(own_lines):
    """The Quantity of the line."""
    return Quantity(*MOVED_SIDEWAYS, True, own_lines)
