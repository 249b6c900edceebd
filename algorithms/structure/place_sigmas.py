"""Standard deviations that points bring of their own places, and what they are across the axis."""

import numpy as np

from ..boundary.input_fields import named_field
from ..boundary.points import placed_points
from ..core.errors import InputError
from ..core.sideways_sigma import sideways_sigma
from ..language.number_text import listed, plain_text
from ..language.translation import tr

# Parameter, usual name of the field.
_FIELDS = {"SIGMA_EAST": "sd_e", "SIGMA_NORTH": "sd_n", "CORRELATION": "cor_en"}


class PlaceSigmas:
    """The fields with the standard deviations of east and north, and their correlation, of one run. ``columns``: what
    is read for them, see read_structure; {} where the points bring none."""

    def __init__(self, asked, source):
        self._source = source
        self._index = {
            key: named_field(source, asked.text(f"{key}_FIELD"), f"{key}_FIELD", (usual,))
            for key, usual in _FIELDS.items()
        }
        asked_for = [f"{key}_FIELD" for key in _FIELDS if asked.text(f"{key}_FIELD")]
        both = all(self._index[key] >= 0 for key in ("SIGMA_EAST", "SIGMA_NORTH"))
        if asked_for and not both:
            raise InputError(
                tr(
                    "Layer '{}': across the axis both standard deviations count, east and north; {} is not enough."
                ).format(source.sourceName(), listed(asked_for)),
                keys=tuple(asked_for),
            )
        self._used = [key for key, index in self._index.items() if both and index >= 0]
        self.columns = {key: (lambda _source, k=self._index[key]: k) for key in self._used}

    def __bool__(self):
        return bool(self._used)

    def tell(self, asked):
        """The sentence on what was carried across the axis, and from which fields."""
        names = listed([f"'{self._source.fields()[self._index[key]].name()}'" for key in self._used])
        asked.say(
            tr(
                "Standard deviations of positions from the fields {}: 'sd_line' is what they are across the axis, in "
                "their unit."
            ).format(names)
        )

    def across(self, structure):
        """Standard deviation across the axis of each row, (rows,), in the unit of the fields; NaN off every axis and
        where a point has none. InputError naming layer, row and field for a value that cannot be."""
        points, on, station = structure.points, ~structure.off, structure.feet.station
        east, north = (points.columns[key] for key in ("SIGMA_EAST", "SIGMA_NORTH"))
        correlation = points.columns.get("CORRELATION", np.zeros(len(points)))
        needed = np.zeros(len(points), bool)
        needed[station[on]] = True
        for key, bad in (
            ("SIGMA_EAST", east < 0),
            ("SIGMA_NORTH", north < 0),
            ("CORRELATION", np.abs(correlation) > 1),
        ):
            self._refuse(key, points, np.flatnonzero(needed & bad))
        found, rows = np.full(len(on), np.nan), station[on]
        right = _right(self._source.sourceCrs(), structure.axes[0].line.ellipsoid, *structure.foot_places(on))
        known = np.where(np.isnan(correlation[rows]), 0.0, correlation[rows])
        found[on] = sideways_sigma(east[rows], north[rows], known, *right)
        return found

    def _refuse(self, key, points, bad):
        if not len(bad):
            return
        sentence = (
            tr("Layer '{}', row {}: the correlation in the field '{}' is {}; it must be from -1 to 1.")
            if key == "CORRELATION"
            else tr("Layer '{}', row {}: the standard deviation in the field '{}' is {}; it must not be negative.")
        )
        name, value = self._source.fields()[self._index[key]].name(), points.columns[key][bad[0]]
        raise InputError(sentence.format(points.name, bad[0] + 1, name, plain_text(value)), keys=(f"{key}_FIELD",))


def _right(crs, ellipsoid, lat, lon, azimuth):
    """The direction to the right of the axis at places with its ``azimuth``, degrees (n,), in the coordinates of
    ``crs``, of any length: two arrays (n,). On a projection its north is that of the grid."""
    if crs.isGeographic():
        return np.cos(np.radians(azimuth)), -np.sin(np.radians(azimuth))
    aside = ellipsoid.forward(lat, lon, azimuth + 90.0, np.ones(len(lat)))[:2]
    (x, y), (x_right, y_right) = placed_points(lat, lon, crs), placed_points(*aside, crs)
    return x_right - x, y_right - y
