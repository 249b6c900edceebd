"""Levelled lines and benchmarks of a run as read, with the accuracy of each line."""

from dataclasses import dataclass

import numpy as np
from qgis.core import QgsWkbTypes

from ..boundary.input_fields import named_field
from ..boundary.tables import read_table
from ..core.errors import InputError
from ..core.level_net import LevelNet, level_net
from ..language.number_text import listed, number_text
from ..language.translation import tr
from ..structure.named_points import NAMES
from .parameters import line_field_table

_NUMBERS = ("DIFFERENCE_FIELD", "LENGTH_FIELD", "SETUPS_FIELD", "SIGMA_FIELD")
_TYPED = (("SIGMA_KM", "km"), ("SIGMA_SETUP", "setup"), ("SIGMA", "equal"))


@dataclass(frozen=True)
class LevelInput:
    """Lines of INPUT. ``table``: as read; ``used``: its rows that are lines of the net (n,); ``net``: LevelNet of
    these; ``known``: True where their standard deviations are in metres; ``weights``: of WEIGHTS; ``described``: how
    the lines' accuracy was found; ``fields``: {key: index}."""

    source: object
    table: object
    fields: dict
    used: np.ndarray
    net: LevelNet
    known: bool
    weights: str
    described: str

    def named(self, key):
        """The field read for a key; '' for none."""
        index = self.fields[key]
        return "" if index < 0 else self.source.fields()[index].name()


def read_lines(asked, units):
    """LevelInput of the run; InputError that names layer, field and row for what cannot be."""
    source = asked.source("INPUT")
    fields = {key: named_field(source, asked.text(key), key, names) for key, _, names, _ in line_field_table()}
    for key, words in (("FROM_FIELD", "'from_pt'"), ("TO_FIELD", "'to_pt'"), ("DIFFERENCE_FIELD", "'dh'")):
        if fields[key] < 0:
            raise InputError(
                tr("Layer '{}' has no field {}; choose it ({}).").format(source.sourceName(), words, key), keys=(key,)
            )
    table = read_table(
        source,
        {key: fields[key] for key in _NUMBERS},
        {key: fields[key] for key in ("FROM_FIELD", "TO_FIELD")},
        asked.feedback,
    )
    if not len(table.ids):
        raise InputError(tr("Layer '{}' has no rows.").format(source.sourceName()))
    used = _used_rows(source, table, asked)
    columns = {key: values[used] for key, values in table.columns.items() if key in _NUMBERS}
    lines = _Lines(source, used, columns, units)
    lines.check("LENGTH_FIELD", columns["LENGTH_FIELD"] < 0.0, tr("the length is negative"))
    weights, deviation, known, described = _deviations(asked, lines, fields)
    names = [[table.columns[key][row] for row in used] for key in ("FROM_FIELD", "TO_FIELD")]
    net = level_net(
        *names, columns["DIFFERENCE_FIELD"] * units.height, columns["LENGTH_FIELD"] * units.chainage, deviation
    )
    return LevelInput(source, table, fields, used, net, known, weights, described)


def _used_rows(source, table, asked):
    """Rows with both names and a height difference; the others stay in the output and are told."""
    starts, ends, difference = (table.columns[key] for key in ("FROM_FIELD", "TO_FIELD", "DIFFERENCE_FIELD"))
    used, left = [], []
    for row, (start, end) in enumerate(zip(starts, ends)):
        if start and start == end:
            raise InputError(
                tr("Layer '{}', row {}: the line starts and ends at '{}'.").format(source.sourceName(), row + 1, start)
            )
        (used if start and end and np.isfinite(difference[row]) else left).append(row)
    if left:
        asked.warn(
            tr("Layer '{}': not used, since a point or the height difference is missing: {} {}.").format(
                source.sourceName(), tr("row") if len(left) == 1 else tr("rows"), listed([row + 1 for row in left])
            )
        )
    if not used:
        raise InputError(tr("Layer '{}': no row has both points and a height difference.").format(source.sourceName()))
    return np.array(used, int)


@dataclass(frozen=True)
class _Lines:
    source: object
    used: np.ndarray
    columns: dict
    units: object

    def check(self, key, bad, words):
        """InputError for the first row that is ``bad`` (n,)."""
        if np.any(bad):
            at = int(np.flatnonzero(bad)[0])
            raise InputError(
                tr("Layer '{}', row {}: {} ({}: {}).").format(
                    self.source.sourceName(), self.used[at] + 1, words, key, number_text(self.columns[key][at], 6)
                )
            )

    def has(self, key):
        return bool(np.any(np.isfinite(self.columns[key])))


def _deviations(asked, lines, fields):
    """What WEIGHTS says or the fields allow: its name, the lines' standard deviations, whether in metres,
    and in words.
    """
    typed = {key: asked.number(key) for key, _ in _TYPED}
    for key, value in typed.items():
        if value is not None and not value > 0.0:
            raise InputError(tr("{} is {}; it must be positive.").format(key, number_text(value, 6)), keys=(key,))
    weights = asked.choice("WEIGHTS")
    weights = weights or next((kind for key, kind in _TYPED if typed[key] is not None), "")
    if not weights and lines.has("SIGMA_FIELD"):
        weights = "line"
    weights = weights or ("km" if lines.has("LENGTH_FIELD") else "setup" if lines.has("SETUPS_FIELD") else "equal")
    columns, units = lines.columns, lines.units
    if weights == "line":
        sd = columns["SIGMA_FIELD"]
        lines.check("SIGMA_FIELD", ~(sd > 0.0), tr("the standard deviation must be positive"))
        return (
            weights,
            sd * units.height,
            True,
            tr("standard deviations of the lines from the field '{}'").format(
                lines.source.fields()[fields["SIGMA_FIELD"]].name()
            ),
        )
    if weights == "equal":
        sigma = typed["SIGMA"]
        words = (
            tr("one accuracy for all lines, estimated")
            if sigma is None
            else tr("{} {} for every line").format(number_text(sigma, 6), units.height_label)
        )
        return (
            weights,
            np.full(len(lines.used), 1.0 if sigma is None else sigma * units.height),
            sigma is not None,
            words,
        )
    key, sigma, what = (
        ("LENGTH_FIELD", typed["SIGMA_KM"], tr("1 km"))
        if weights == "km"
        else ("SETUPS_FIELD", typed["SIGMA_SETUP"], tr("a setup"))
    )
    size = columns[key] * (units.chainage / 1000.0 if weights == "km" else 1.0)
    lines.check(key, ~(size > 0.0), tr("WEIGHTS '{}' needs a positive number").format(weights))
    words = (
        tr("weights by {}, the standard deviation of {} estimated").format(
            tr("length") if weights == "km" else tr("setups"), what
        )
        if sigma is None
        else tr("{} mm for {}, growing with the square root").format(number_text(sigma, 3), what)
    )
    return weights, np.sqrt(size) * (1e-3 if sigma is None else sigma * 1e-3), sigma is not None, words


@dataclass(frozen=True)
class Benchmark:
    """A point of given height: metres; ``deviation`` 0 where it is held fixed."""

    name: str
    height: float
    deviation: float


def read_benchmarks(asked, unit):
    """Benchmarks by name, {} without a layer. ``unit``: metres per unit of heights. Rows without a height are none."""
    source = asked.optional_source("BENCHMARKS")
    if source is None:
        return {}
    name = named_field(source, asked.text("BENCHMARK_FIELD"), "BENCHMARK_FIELD", (*NAMES, "benchmark"))
    height = named_field(source, asked.text("BENCHMARK_HEIGHT_FIELD"), "BENCHMARK_HEIGHT_FIELD", ("height",))
    sigma = named_field(source, asked.text("BENCHMARK_SIGMA_FIELD"), "BENCHMARK_SIGMA_FIELD", ("sd",))
    if name < 0:
        raise InputError(
            tr("Layer '{}' has no field with the benchmarks' names; choose it (BENCHMARK_FIELD).").format(
                source.sourceName()
            ),
            keys=("BENCHMARK_FIELD",),
        )
    use_z = height < 0 and QgsWkbTypes.hasZ(source.wkbType())
    if height < 0 and not use_z:
        raise InputError(
            tr(
                "Layer '{}' has no field 'height' and no Z; choose the field with the benchmarks' heights "
                "(BENCHMARK_HEIGHT_FIELD)."
            ).format(source.sourceName()),
            keys=("BENCHMARK_HEIGHT_FIELD",),
        )
    table = read_table(source, {"height": height, "sd": sigma}, {"name": name}, asked.feedback, geometry=use_z)
    return _benchmarks(source, table, table.xyz[2] if use_z else table.columns["height"], unit)


def _benchmarks(source, table, heights, unit):
    found, rows = {}, {}
    for row, (name, height, sd) in enumerate(zip(table.columns["name"], heights, table.columns["sd"])):
        if not name or not np.isfinite(height):
            continue
        if name in found:
            raise InputError(
                tr("Layer '{}', rows {} and {}: the benchmark '{}' is given twice.").format(
                    source.sourceName(), rows[name] + 1, row + 1, name
                )
            )
        if sd < 0.0:
            raise InputError(
                tr("Layer '{}', row {}: the standard deviation of the benchmark '{}' is negative.").format(
                    source.sourceName(), row + 1, name
                )
            )
        rows[name] = row
        found[name] = Benchmark(name, float(height) * unit, 0.0 if np.isnan(sd) else float(sd) * unit)
    if not found:
        raise InputError(tr("Layer '{}' has no row with a name and a height.").format(source.sourceName()))
    return found
