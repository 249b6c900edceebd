"""One run of convertheights: undulation, ellipsoidal height and height above the geoid of each point."""

import numpy as np

from ..boundary.height_column import height_column
from ..boundary.input_fields import named_field
from ..boundary.output_rows import OutputTable
from ..boundary.points import read_points
from ..core.errors import InputError
from ..entry.base import Result
from ..entry.moved_points import warn_of_moved_points
from ..entry.recorded_system import UNKNOWN, recorded_kind
from ..language.number_text import counted, number_text
from ..language.translation import tr
from ..styles.layer_kinds import StyleSpec
from .geoid_profiles import GeoidProfiles, grid_described
from .height_system import height_system, undulation_index
from .measured_before import chainage_before
from .structure import units_of_stations
from .vertical_system import check_vertical


class ConversionRun:
    """One run: points converted, and where an axis is given the geoid along it."""

    def __init__(self, asked):
        self.asked = asked

    def result(self):
        asked = self.asked
        source = asked.source("STATIONS")
        run_units = units_of_stations(asked)
        heights = height_column(source, asked.text("HEIGHT_FIELD"))
        find = undulation_index(asked)
        numbers = {"height": heights.index, "undulation": find(source)}
        if asked.given("AXIS"):
            numbers.update(chainage_before(asked.record_of("STATIONS"), source))
        points = read_points(source, asked.feedback, numbers)
        if any(named_field(source, "", "", (name,)) >= 0 for name in ("chainage", "offset")):
            warn_of_moved_points(asked, "STATIONS", asked.record_of("STATIONS"), points)
        field = source.fields()[heights.index].name() if heights.index >= 0 else ""
        check_vertical(asked, points, run_units.height_name, field, key="HEIGHTS_ARE", said=_direction(asked))
        given = points.columns["height"] if heights.index >= 0 else points.z
        asked.progress(30)
        system = height_system(asked, points, run_units.height)
        n = system.undulation / run_units.height
        from_ellipsoid = _direction(asked) == "ellipsoidal"
        columns = {
            "undulation": n,
            "height_ell": given if from_ellipsoid else given + n,
            "height_geo": given - n if from_ellipsoid else given,
        }
        self._tell(points, heights, system, given, n, from_ellipsoid, run_units, asked)
        described = grid_described(asked, system)
        if described:
            asked.say(described)
        style = StyleSpec(
            "converted",
            tr("Converted heights"),
            run_units.height_name,
            run_units.chainage_name,
            None,
            asked.record(
                units=run_units,
                crs=points.crs,
                **system.recorded,
                height_fields=_kinds(source, heights.index, system.kind, from_ellipsoid),
            ).text(),
        )
        table = OutputTable.beside("OUTPUT", columns, style, source, np.arange(len(points)), points)
        tables = [table]
        if asked.optional_source("AXIS") is not None:
            profiles = GeoidProfiles(asked, points, system, run_units)
            profiles.tell()
            tables.append(profiles.table(style.record))
        elif asked.given("CURVE"):
            raise InputError(tr("CURVE needs an axis: give AXIS."), keys=("AXIS", "CURVE"))
        return Result(tables, {"COUNT": int(np.isfinite(given).sum())})

    @staticmethod
    def _tell(points, heights, system, given, n, from_ellipsoid, run_units, asked):
        asked.say(
            tr("Understood: {} of layer '{}'; heights from {} in {}, taken as {}.").format(
                counted(len(points), tr("point"), tr("points")),
                points.name,
                heights.described,
                run_units.height_label,
                tr("ellipsoidal") if from_ellipsoid else tr("above the geoid"),
            )
        )
        asked.say(
            tr("Undulations {} to {} {} ({}).").format(
                number_text(n.min(), 3), number_text(n.max(), 3), run_units.height_label, system.source
            )
        )
        asked.say(
            tr("{} converted; {} none.").format(
                counted(int(np.isfinite(given).sum()), tr("height"), tr("heights")),
                counted(int(np.isnan(given).sum()), tr("point has"), tr("points have")),
            )
        )


def _direction(asked):
    """HEIGHTS_ARE: the record's, else the form's, else 'ellipsoidal'. InputError where the two contradict each other,
    both named."""
    typed, record = asked.choice("HEIGHTS_ARE"), asked.record_of("STATIONS")
    kind = recorded_kind(record, asked.text("HEIGHT_FIELD"))
    recorded = "" if not kind else "ellipsoidal" if kind == "ellipsoidal" else "geoid"
    if typed and recorded and typed != recorded:
        raise InputError(
            tr("HEIGHTS_ARE is '{}', but the record of layer '{}' says '{}'; they cannot both be right.").format(
                typed, asked.source("STATIONS").sourceName(), kind
            ),
            keys=("HEIGHTS_ARE", "STATIONS"),
        )
    # A run that did not know the undulation took the heights as above the geoid.
    return typed or recorded or ("geoid" if record.height_system == UNKNOWN else "ellipsoidal")


def _kinds(source, index, kind, from_ellipsoid):
    """What the heights in each field of the result are, for its record: {name: of UNDULATION}."""
    given = {source.fields()[index].name(): "ellipsoidal" if from_ellipsoid else kind} if index >= 0 else {}
    return {**given, "height_ell": "ellipsoidal", "height_geo": kind}
