"""What was computed, from the records of the runs: design, controls, Earth model, height system, units, versions."""

import numpy as np

from ..core.geodesy import datum_name, ellipsoid_of
from ..core.station_notation import station_text
from ..core.units import metres_per
from ..entry.recorded_paths import common_folder, shortened
from ..language.height_text import full_height, height_text
from ..language.number_text import number_text
from ..language.shown_stations import shown_station
from ..language.stored_words import described, stored_text
from ..language.translation import tr, translatable
from ..language.units import UNIT_LABELS, defined_unit
from .commands import versions_text
from .line_tables import line_facts
from .sentences import deviation_text

_NOT_RECORDED = translatable("not recorded: the stations carry no record of their run")


def run_facts(found, titles, crs):
    """(name, value) of what holds for all axes. ``crs``: that of the stations as the core takes it."""
    one, record = found.reviewed, found.reviewed.record
    ellipsoid = ellipsoid_of(crs)
    yield tr("Stations"), tr("layer '{}'").format(one.points.name)
    days = sorted({text[:10] for text in one.date if text})
    if days:
        yield tr("Surveyed"), days[0] if len(days) == 1 else tr("{} to {}").format(days[0], days[-1])
    yield tr("Heights"), described("height_system", record.height_system) or tr(_NOT_RECORDED)
    source = record.undulation_source
    if record.height_system in ("grid", "constant") and source:
        value = tr("{} in the unit of heights").format(source.replace("-", "\u2212"))
        if record.height_system == "grid":
            value = shortened(source, common_folder([record]))
        yield tr("Source of the undulations"), value
    yield tr("Unit of heights"), defined_unit(one.units.height_name)
    yield tr("Unit of chainages"), defined_unit(one.units.chainage_name)
    name = f"{one.points.crs.authid()} {one.points.crs.description()}".strip()
    yield tr("Coordinate reference system"), f"{name}; {datum_name(crs)}"
    shape = tr("a = {} m, 1/f = {}") if ellipsoid.f else tr("sphere of {} m")
    yield tr("Ellipsoid"), shape.format(number_text(ellipsoid.a, 3), number_text(1.0 / (ellipsoid.f or 1.0), 9))
    stated = deviation_text(found) + f" ({one.sd_source})"
    yield tr("Standard deviation of a height"), stated if one.sd_source else tr("not stated")
    if found.line is not None:
        line = one.line
        accuracy = tr("not stated")
        if line.sd_source:
            accuracy = f"{found.line.amounts.with_unit(line.sd)} ({line.sd_source})"
        yield tr("Standard deviation of a lateral position"), accuracy
    yield tr("Computed with"), versions_text(record) if record else tr(_NOT_RECORDED)
    yield tr("Reported with"), titles["VERSIONS"]
    yield from _reference_facts(one)


def _reference_facts(one):
    for row in one.references[:12]:
        text = tr("{}: {} stations, {} set aside, global test {}").format(
            stored_text("kind", row["kind"]),
            number_text(row["number"], 0),
            number_text(row["removed"], 0),
            stored_text("global_t", row["global_t"] or "none"),
        )
        text += "".join(
            _place(row, name, words) for name, words in (("lev", tr("level point")), ("tan", tr("tangent point")))
        )
        yield tr("Reference {}").format(row["name"]), text


def _place(row, name, words):
    """Where a reference is level, or tangent to the ellipsoid, with its standard deviation; '' where it is not told."""
    if not np.isfinite(row[f"{name}_lat"]):
        state = row[f"{name}_state"]
        return tr("; {} {}").format(words, stored_text("state", state)) if state else ""
    text = tr("; {} at latitude {}°, longitude {}°").format(
        words, number_text(row[f"{name}_lat"], 5), number_text(row[f"{name}_lon"], 5)
    )
    if np.isfinite(row[f"{name}_sd"]):
        unit = row["record"].chainage_unit or row["h_unit"] or "metre"
        text += tr(", standard deviation {} {}").format(number_text(row[f"{name}_sd"], 0), UNIT_LABELS[unit])
    return text + ", " + stored_text("state", row[f"{name}_state"])


def axis_facts(found, axis):
    """(name, value) of one axis as its record tells; nothing without a record."""
    one, record = found.reviewed, found.reviewed.record
    mine = record.axis(axis)
    if not mine:
        return
    design = mine.get("design", "")
    yield tr("Design"), described("design", design) or design or tr("not recorded")
    if design == "level" and record.more.get("gravity") == "normal":
        yield tr("Gravity"), tr("normal on GRS 80: still water, whose heights fall towards the poles")
    for letter, control in zip("AB", mine.get("controls", ())):
        yield tr("Control {}").format(letter), _control(control, record)
    slope = mine.get("slope")
    if slope is not None and design in ("inclined", "grade"):
        yield tr("Slope"), tr("{} (rise per chainage)").format(number_text(slope, 8))
    height_unit = record.height_unit or one.units.height_name
    height = record.axis_number(axis, "chainage_height")
    if height is not None:
        yield tr("Chainage height, ellipsoidal"), full_height(height * metres_per(height_unit), height_unit)
    earth = mine.get("earth", "")
    yield tr("Earth model"), described("earth", earth) or earth or tr("not recorded")
    if design in ("tangent", "inclined"):
        yield tr("Horizon"), tr("of the geoid") if mine.get("horizon") == "geoid" else tr("of the ellipsoid")
    if mine.get("refraction"):
        yield tr("Refraction coefficient k"), number_text(mine["refraction"], 3)
    tolerance = record.axis_number(axis, "tolerance")
    if tolerance is not None:
        yield tr("Tolerance"), "±" + found.amounts.with_unit(tolerance * metres_per(height_unit))
    yield from line_facts(found, axis)


def _control(control, record):
    unit = record.height_unit or "metre"
    along = record.chainage_unit or unit
    chainage, height = float(control["chainage"]), float(control["height"])
    how = tr("stated") if control.get("typed") else tr("the as-built height there")
    return tr("{}, {} {} ({})").format(
        shown_station(station_text(chainage, along)),
        height_text(height * metres_per(unit), unit),
        UNIT_LABELS[unit],
        how,
    )
