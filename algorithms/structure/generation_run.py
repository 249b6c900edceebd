"""One run of generatestations: the chainages asked for on each axis, and the points there."""

import re
from dataclasses import replace

import numpy as np
from qgis.core import QgsWkbTypes

from ..boundary.axes import read_axes
from ..boundary.cancel import check_cancel
from ..boundary.output_rows import OutputTable
from ..boundary.points import placed_points
from ..boundary.reference_systems import checked_crs
from ..core.errors import InputError
from ..entry.base import Result
from ..language.number_text import counted, listed, number_text
from ..language.translation import tr
from ..styles.layer_kinds import StyleSpec
from .axis_overrides import AxisFields, axis_at_height
from .axis_words import tell_axes
from .checks import SAME_STATION
from .notation import station_style

MOST_STATIONS = 2_000_000


class GenerationRun:
    """One run: stations along each axis."""

    def __init__(self, asked):
        self.asked = asked

    def result(self):
        asked = self.asked
        source = asked.source("AXIS")
        crs = checked_crs(source)
        axes = read_axes(source, asked.text("AXIS_FIELD"), asked.feedback)
        tell_axes(asked, axes, source)
        run_units = asked.units()
        notation = station_style(asked, run_units, len(axes))
        wanted = _Wanted(asked, notation, run_units)
        fields, parts = AxisFields(source), []
        for number, axis in enumerate(axes, 1):
            check_cancel(asked.feedback)
            placed, _ = axis_at_height(asked, axis, number, fields, notation, run_units, np.zeros(0))
            chainage = wanted.chainages(placed, asked)
            lat, lon, azimuth = placed.place(chainage) if len(chainage) else (np.zeros(0),) * 3
            parts.append((np.full(len(chainage), number - 1), chainage, lat, lon, azimuth))
            first, last = notation.all_shown(placed.vertex_chainages[[0, -1]])
            asked.say(
                tr("Axis '{}' from {} to {}: {}.").format(
                    axis.line.name, first, last, counted(len(chainage), tr("station"), tr("stations"))
                )
            )
            asked.progress(60.0 * number / len(axes))
        index, chainage, lat, lon, azimuth = (np.concatenate(values) for values in zip(*parts))
        if not len(chainage):
            raise InputError(tr("No station results: all listed chainages lie beyond the axes."))
        x, y = placed_points(lat, lon, crs)
        columns = {
            "axis": [axes[k].line.name for k in index],
            "station": notation.texts(chainage),
            "chainage": chainage / run_units.chainage,
            "offset": np.zeros(len(chainage)),
            "azimuth": azimuth,
        }
        # There are no heights yet: of their unit the record says only what is stated.
        record = asked.record(units=run_units, crs=crs)
        style = StyleSpec(
            "stations",
            tr("Generated stations"),
            run_units.height_name,
            run_units.chainage_name,
            None,
            (record if asked.choice("HEIGHT_UNIT") else replace(record, height_unit="")).text(),
        )
        table = OutputTable("OUTPUT", columns, crs, QgsWkbTypes.Type.Point, style, points=(x, y))
        return Result([table], {"COUNT": len(chainage)})


class _Wanted:
    """Which chainages are asked for."""

    def __init__(self, asked, notation, run_units):
        interval = asked.number("INTERVAL")
        self.interval = None if not interval else interval * run_units.chainage
        self.at_vertices, self.units = asked.flag("AT_VERTICES"), run_units
        text = asked.text("CHAINAGES")
        parts = [part.strip() for part in re.split(r"[;\n]", text)]
        self.listed = np.array([notation.chainage(part) for part in parts if part], float)
        if self.interval is None and not self.at_vertices and not len(self.listed):
            raise InputError(
                tr("Nothing is asked for: give INTERVAL, CHAINAGES, or AT_VERTICES."),
                keys=("INTERVAL", "CHAINAGES", "AT_VERTICES"),
            )

    def chainages(self, axis, asked):
        """Rising chainages on one axis, metres; those beyond its ends are left out with a warning."""
        first, last = axis.vertex_chainages[[0, -1]]
        parts = [self.listed[(self.listed >= first - SAME_STATION) & (self.listed <= last + SAME_STATION)]]
        beyond = len(self.listed) - len(parts[0])
        if beyond:
            asked.warn(
                tr("Axis '{}': {} beyond its ends, by up to {} {}: left out.").format(
                    axis.line.name,
                    counted(beyond, tr("listed chainage lies"), tr("listed chainages lie")),
                    number_text(np.maximum(first - self.listed, self.listed - last).max() / self.units.chainage, 2),
                    self.units.chainage_label,
                )
            )
        if self.at_vertices:
            parts.append(axis.vertex_chainages)
        if self.interval is not None:
            if (last - first) / self.interval > MOST_STATIONS:
                raise InputError(
                    tr("Axis '{}': the interval would make more than {} stations.").format(
                        axis.line.name, listed([MOST_STATIONS])
                    )
                )
            # A multiple that misses an end by rounding only belongs to the axis.
            slack = SAME_STATION / self.interval
            parts.append(
                np.arange(np.ceil(first / self.interval - slack), np.floor(last / self.interval + slack) + 1)
                * self.interval
            )
        chainages = np.sort(np.concatenate(parts))
        return chainages[np.concatenate([[True], np.diff(chainages) > SAME_STATION])] if len(chainages) else chainages
