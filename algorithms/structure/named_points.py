"""Points known by their names: where lines between them run."""

from dataclasses import dataclass

import numpy as np

from ..boundary.geometries import line_shapes
from ..boundary.input_fields import named_field
from ..boundary.points import read_points
from ..boundary.reference_systems import definition
from ..core.errors import InputError
from ..core.geodesy import ellipsoid_of
from ..core.segments import Segments
from ..language.translation import tr

NAMES = ("point", "name", "station")


@dataclass(frozen=True)
class NamedPoints:
    """``points``: as read; ``names``: texts (n,); ``place``: {name: row}; ``source``."""

    points: object
    names: list
    place: dict
    source: object

    def lines(self, starts, ends):
        """Shapes of the lines between named points, an empty one where an end is not among them."""
        rows = self._rows(starts, ends)
        there = np.all(rows >= 0, axis=1)
        ends = rows[there].ravel()
        paths = Segments(np.full(int(there.sum()), 2))
        return line_shapes(self.points.x[ends], self.points.y[ends], paths, there)

    def _rows(self, starts, ends):
        """Rows of both ends of lines (n, 2), -1 for a name that is not among the points."""
        place = [(self.place.get(start, -1), self.place.get(end, -1)) for start, end in zip(starts, ends)]
        return np.array(place, int).reshape(-1, 2)

    def latitudes_and_azimuths(self, starts, ends):
        """Latitude in the middle and azimuth, degrees (n,), of each line; NaN where an end is not among the points."""
        a, b = self._rows(starts, ends).T
        lat, azimuth = np.full(len(a), np.nan), np.full(len(a), np.nan)
        known = (a >= 0) & (b >= 0) & (a != b)
        if np.any(known):
            a, b, points = a[known], b[known], self.points
            azimuth[known], _, _ = self.ellipsoid.inverse(points.lat[a], points.lon[a], points.lat[b], points.lon[b])
            lat[known] = 0.5 * (points.lat[a] + points.lat[b])
        return lat, azimuth

    @property
    def ellipsoid(self):
        """Ellipsoid of the points' datum."""
        return ellipsoid_of(definition(self.points.crs))


def read_named_points(asked):
    """NamedPoints of STATIONS and NAME_FIELD; None where no layer is given. InputError for a name that occurs twice."""
    source = asked.optional_source("STATIONS")
    if source is None:
        return None
    index = named_field(source, asked.text("NAME_FIELD"), "NAME_FIELD", NAMES)
    if index < 0:
        raise InputError(
            tr("Layer '{}' has no field {}; choose the field with the stations' names (NAME_FIELD).").format(
                source.sourceName(), tr(" or ").join(f"'{name}'" for name in NAMES)
            ),
            keys=("NAME_FIELD",),
        )
    points = read_points(source, asked.feedback, texts={"name": index})
    names, place = points.columns["name"], {}
    for row, name in enumerate(names):
        if name and name in place:
            raise InputError(
                tr("Layer '{}', field '{}', rows {} and {}: the name '{}' occurs twice.").format(
                    source.sourceName(), source.fields()[index].name(), place[name] + 1, row + 1, name
                )
            )
        if name:
            place[name] = row
    return NamedPoints(points, names, place, source)
