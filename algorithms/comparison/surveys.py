"""Reads the surveys of one structure from their layers: heights, deviations, places along the axis, dates."""

from dataclasses import dataclass, replace
from datetime import date
from typing import Optional

import numpy as np
from qgis.core import QgsVectorLayer, QgsWkbTypes

from ..boundary.input_fields import headings_of, named_field
from ..boundary.points import read_points
from ..boundary.reference_systems import checked_crs
from ..core.errors import InputError
from ..core.station_notation import notation, station_texts
from ..entry.moved_points import warn_of_moved_points
from ..entry.run_record import RunRecord
from ..entry.stated_units import stated_units
from ..language.core_sentences import worded
from ..language.number_text import counted, plain_text
from ..language.translation import tr
from ..language.units import Units
from ..structure.recorded_covariance import added_text, given_covariance, with_marks
from .line_readings import SD_FIELD, is_own_line, read_line
from .parameters import FIELDS
from .survey import Survey
from .survey_accuracy import LISTS, SurveyAccuracy, checked_deviations, stated

LONG_SURVEY = 60
# Fewer heights than these, written to the millimetre, may well be read the same again.
COPIED_STATIONS = 4
# What is read of the line, beside the offset.
LINE_FIELDS = ("lateral", SD_FIELD)


def survey_layers(asked):
    """The layers of SURVEYS; InputError for fewer than two, one given twice, or one that cannot be read."""
    given = asked.given("SURVEYS")
    layers = asked.layers("SURVEYS")
    if isinstance(given, (list, tuple)) and len(layers) != len(given):
        raise InputError(
            tr("{} of {} surveys could be read; check the paths of the others.").format(len(layers), len(given))
        )
    if len(layers) < 2:
        raise InputError(tr("Two surveys or more are needed, and there is {}.").format(len(layers)))
    seen = {}
    for layer in layers:
        place = layer.id() if layer.providerType() == "memory" else layer.source()
        if place in seen:
            raise InputError(
                tr("Layers '{}' and '{}' are the same survey; a survey has not changed against itself.").format(
                    seen[place], layer.name()
                ),
                keys=("SURVEYS",),
            )
        seen[place] = layer.name()
    for layer in layers:
        if not isinstance(layer, QgsVectorLayer):
            raise InputError(tr("Layer '{}' has no points, but points are expected here.").format(layer.name()))
    return layers


def units_of_surveys(asked):
    """Units of each survey in the order given, by form, its record and its headings; the run is in those of the
    first."""
    found = []
    for number, layer in enumerate(survey_layers(asked)):
        source = asked.source_of("SURVEYS", layer)
        record = _record(asked, number)
        height = named_field(source, asked.text("HEIGHT_FIELD"), "HEIGHT_FIELD", ("height",))
        found.append(stated_units(asked, record, source.sourceName(), headings_of(source, height)))
    return found


def _record(asked, number):
    """The record of the run that made survey ``number``, counted from 0."""
    return dict(enumerate(asked.records.get("SURVEYS", ()))).get(number, RunRecord())


def read_surveys(asked, units):
    """Read all surveys, the earliest first where all have dates, else in their order. ``units``: of each; what is typed
    is in those of the first."""
    layers = survey_layers(asked)
    typed = _typed_dates(asked.text("DATES"), len(layers))
    sigmas, km, lines = (stated(asked, key, len(layers)) for key in LISTS)
    surveys = []
    for number, layer in enumerate(layers):
        source = asked.source_of("SURVEYS", layer)
        walk = None if km[number] is None else km[number] / 1000.0
        told = _Stated(number, sigmas[number], walk, lines[number], units[0])
        surveys.append(_survey(asked, units[number], source, typed[number] if typed else None, told))
        asked.progress(30.0 * (number + 1) / len(layers))
    _warn_of_copies(surveys, asked)
    if all(survey.day for survey in surveys):
        surveys.sort(key=lambda survey: survey.day)
    else:
        asked.warn(
            tr(
                "Not all surveys have a date (DATES, or a field 'date'): they are taken in the order given, without "
                "rates."
            )
        )
    labels = [survey.day.isoformat() if survey.day else survey.name for survey in surveys]
    labels = [f"{label} {survey.name}" if labels.count(label) > 1 else label for label, survey in zip(labels, surveys)]
    labels = [f"{label} ({number})" if labels.count(label) > 1 else label for number, label in enumerate(labels, 1)]
    return [replace(survey, label=label) for survey, label in zip(surveys, labels)]


def _warn_of_copies(surveys, asked):
    """A copy of a layer under another name is no second survey; heights read anew never agree throughout."""
    seen = {}
    for survey in surveys:
        readings = survey.fingerprint()
        if readings in seen and np.sum(np.isfinite(survey.height)) >= COPIED_STATIONS:
            asked.warn(
                tr(
                    "Layers '{}' and '{}' have the same heights at every station; check that one survey is not given "
                    "twice."
                ).format(seen[readings], survey.name),
                keys=("SURVEYS",),
            )
        seen.setdefault(readings, survey.name)


def _day(text, where, keys=()):
    try:
        return date.fromisoformat(text[:10])
    except ValueError:
        raise InputError(
            tr("{}: '{}' is not a date; expected year-month-day, for example 2025-03-11.").format(where, text),
            keys=keys,
        ) from None


def _typed_dates(text, number):
    parts = [part.strip() for part in text.split(";") if part.strip()]
    if parts and len(parts) != number:
        raise InputError(
            tr("DATES has {}, but there are {}.").format(
                counted(len(parts), tr("date"), tr("dates")), counted(number, tr("survey"), tr("surveys"))
            ),
            keys=("DATES",),
        )
    return [_day(part, "DATES", ("DATES",)) for part in parts]


@dataclass(frozen=True)
class _Stated:
    """What the form says of the accuracy of survey ``number``, from 0: ``sigma``, in the unit of heights of ``units``,
    ``km``, metres, ``line``, as sigma; None where it says nothing."""

    number: int
    sigma: Optional[float]
    km: Optional[float]
    line: Optional[float]
    units: Units


def _survey(asked, run_units, source, typed, told):
    given, dated = asked.text("HEIGHT_FIELD"), asked.text("DATE_FIELD")
    index = {
        key: named_field(source, "", "", (key,))
        for key in ("chainage", "offset", "sd", "design_h", "residual", *LINE_FIELDS, "axis", "station")
    }
    index["height"] = named_field(source, given, "HEIGHT_FIELD", ("height",))
    index["date"] = named_field(source, dated, "DATE_FIELD", ("date",))
    designed = index["design_h"] >= 0 and index["residual"] >= 0
    if index["height"] < 0 and not designed and not QgsWkbTypes.hasZ(source.wkbType()):
        raise InputError(
            tr(
                "Layer '{}' has no field 'height', no design_h and residual, and its points have no Z; choose the "
                "field with the heights (HEIGHT_FIELD)."
            ).format(source.sourceName()),
            keys=("HEIGHT_FIELD",),
        )
    if index["chainage"] < 0 and index["station"] < 0:
        raise InputError(
            tr(
                "Layer '{}' has neither a field 'chainage' nor 'station'; run 'Measure chainage and offset' first."
            ).format(source.sourceName())
        )
    kind = asked.choice("LINE")
    # Whoever compares heights alone has none of the line read, and none in the record of what was.
    line_fields = LINE_FIELDS if kind in FIELDS else ()
    numbers = ("chainage", "offset", "sd", "design_h", "residual", *line_fields, "height")
    points = read_points(
        source,
        asked.feedback,
        {key: index[key] for key in numbers},
        {key: index[key] for key in ("axis", "station", "date")},
    )
    record = _record(asked, told.number)
    warn_of_moved_points(asked, "SURVEYS", record, points)
    columns, unit = points.columns, run_units.height
    field = source.fields()[index["height"]].name() if index["height"] >= 0 else ""
    if index["height"] < 0:
        columns["height"] = columns["design_h"] + columns["residual"] if designed else points.z
    chainage = columns["chainage"] if index["chainage"] >= 0 else _from_notation(columns["station"], source)
    station = columns["station"] if index["station"] >= 0 else station_texts(chainage, run_units.chainage_name)
    day = typed or _field_day(columns["date"], source, asked)
    if not np.any(np.isfinite(columns["height"])):
        raise InputError(tr("Layer '{}' has no heights.").format(source.sourceName()))
    chainage = chainage * run_units.chainage
    accuracy = _accuracy(asked, columns, source, run_units, field, told)
    origin = (asked.number("LEVELLED_FROM") or 0.0) * told.units.chainage
    if accuracy.km is not None and not np.all(np.isfinite(chainage[np.isfinite(columns["height"])])):
        raise InputError(
            tr("Layer '{}': SIGMA_KM needs the chainage of every station.").format(source.sourceName()),
            keys=("SIGMA_KM", "SIGMAS_KM"),
        )
    sigma = None if told.line is None else told.line * told.units.height
    line = read_line(kind, columns, source, run_units, sigma)
    return Survey(
        points.name,
        "",
        day,
        checked_crs(source),
        points,
        np.array(columns["axis"], dtype=object),
        station,
        chainage,
        columns["offset"] * run_units.chainage,
        columns["height"] * unit,
        accuracy.deviations(chainage - origin),
        accuracy,
        line,
        is_own_line(kind, record),
    )


def _from_notation(stations, source):
    try:
        return np.array([notation(text)[0] if text else np.nan for text in stations], float)
    except InputError as error:
        raise error.reworded(
            tr("Layer '{}' has no field 'chainage', and its stations cannot be read: {}").format(
                source.sourceName(), worded(error)
            )
        ) from None


def _accuracy(asked, columns, source, run_units, field, told):
    """SurveyAccuracy of one survey: of its covariance, else of what is stated, else of its field 'sd'."""
    record = _record(asked, told.number)
    sigma = None if told.sigma is None else told.sigma * told.units.height
    given = given_covariance(asked, source, sigma, field, key=f"COVARIANCE_{told.number + 1}", record=record)
    if given is not None:
        rows = np.flatnonzero(np.isfinite(columns["height"]))
        matrix = np.full((len(columns["height"]),) * 2, np.nan)
        matrix[np.ix_(rows, rows)] = given.covariance(rows).matrix
        words = tr("covariance in '{}'").format(given.layer) + added_text(given, told.units)
        return SurveyAccuracy(np.full(len(matrix), np.nan), None, matrix, words)
    own, words = columns["sd"] * run_units.height, tr("field 'sd'")
    if sigma is not None:
        own, words = np.full(len(own), sigma), f"{plain_text(told.sigma)} {told.units.height_label}"
    else:
        own = with_marks(own, record)
    own = checked_deviations(own, source, "sd", run_units)
    if not np.any(np.isfinite(own)):
        words = tr("not known")
    if told.km is not None:
        words += tr(", levelling {} mm over 1 km").format(plain_text(told.km * 1000.0))
    return SurveyAccuracy(own, told.km, None, words)


def _field_day(texts, source, asked):
    """The middle of a survey's days by its field; None where it has none."""
    days = sorted(
        _day(text, tr("Layer '{}', row {}").format(source.sourceName(), row))
        for row, text in enumerate(texts, 1)
        if text
    )
    if not days:
        return None
    if (days[-1] - days[0]).days > LONG_SURVEY:
        asked.warn(
            tr("Layer '{}' holds readings from {} to {}; its middle day stands for all.").format(
                source.sourceName(), days[0], days[-1]
            )
        )
    return days[len(days) // 2]
