"""THE run sequence of all entries: read, compute, write, style; a failure or a cancel puts back what was there."""

from dataclasses import replace
from functools import partial
from itertools import chain

import numpy as np
from qgis.core import (
    QgsProcessingContext,
    QgsProcessingException,
    QgsProcessingOutputLayerDefinition,
    QgsProcessingUtils,
)

from ..boundary import output_places, output_rows
from ..boundary.output_stage import OutputStage
from ..boundary.stored_rows import stored_layer
from ..boundary.written_check import check_written
from ..core.errors import InputError
from ..documents.files import write_document
from ..language.translation import tr
from ..styles import saved_styles
from .given_values import SOURCE, given_inputs, given_keys, layer_text
from .layer_records import layer_of, record_of_layer
from .recorded_system import height_kind
from .refusals import refusals_told
from .request import Request
from .run_context import ReadingContext, layers_by_source
from .run_record import record_with_output
from .stale_inputs import warn_of_stale_inputs
from .trial_runs import is_trial
from .written_rows import written_reading

# Parameters that count only where another has this value: given without it, a wrong result would be the reward.
_ONLY_WITH = {
    "UNDULATION_FIELD": ("UNDULATION", "field"),
    "UNDULATION_VALUE": ("UNDULATION", "constant"),
    "GEOID": ("UNDULATION", "grid"),
    "GEOID_NAME": ("UNDULATION", "grid"),
    "GEOID_BETWEEN": ("UNDULATION", "grid"),
    "RADIUS": ("EARTH", "sphere"),
}


def prepare(entry, parameters, context, feedback):
    """Before the run, in the main thread: a layer's own properties must not be touched from the run's, nor the project
    be asked for layers. Returns the run, to be called with the parameters, context and feedback.

    What the run imports of ours is imported now: where the plugin is unloaded while it goes on, that would stay behind.
    """
    computing = entry.computing()
    records, inputs, layers = {}, [], {}
    with refusals_told(feedback):
        for key, value in given_inputs(entry, parameters):
            layer, record = layer_of(value, context), record_of_layer(value, context)
            records.setdefault(key, []).append(record)
            if layer is not None:
                layers[layer_text(value)] = layer
            inputs.append((key, value, record))
        asked = Request(entry, parameters, context, feedback, records)
        for key, value, record in inputs:
            if record.doubt:
                asked.warn(tr("Layer '{}': {}").format(layer_of(value, context).name(), record.doubt), keys=(key,))
        entry.prepared(asked)
        sources = {
            key: entry.parameterAsSource(parameters, key, context) for key in given_keys(entry, SOURCE, parameters)
        }
    known = layers_by_source(context, layers.values())
    # What the layers were made from is read too: whether it has changed since.
    behind = {one.source for record in chain(*records.values()) for one in chain(*record.inputs.values())}
    read = [*layers.values(), *(known[source] for source in behind if source in known)]
    stored = {layer.id(): stored_layer(layer) for layer in read}
    found = {"records": records, "stored": stored, "sources": sources, "known_layers": known}
    return partial(run, entry, computing, layers, found)


def run(entry, computing, layers, found, parameters, context, feedback):
    """The run of ``entry``; ``layers``: {text that names an input: its layer}, ``found``: more keywords of its Request.
    Returns {name: place of an output, or number}."""
    # The oldest host reads a numpy number as 0.
    parameters = {key: value.item() if isinstance(value, np.generic) else value for key, value in parameters.items()}
    asked = Request(entry, parameters, ReadingContext(context, layers), feedback, **found)
    with refusals_told(feedback):
        _warn_of_unused(asked)
        for key in dict.fromkeys(key for key, _ in given_inputs(entry, parameters)):
            warn_of_stale_inputs(asked, key)
        result = computing(asked).result()
        asked.check_cancel()
        written = _write(result, asked, context)
    return {**written, **result.numbers}


def _warn_of_unused(asked):
    for key, (other, value) in _ONLY_WITH.items():
        if not asked.has(key) or asked.given(key) in (None, ""):
            continue
        if not asked.has(other):
            continue
        if (height_kind(asked) if other == "UNDULATION" else asked.choice(other)) != value:
            asked.warn(
                tr("{} is given, but not used, since {} is not '{}'.").format(key, other, value), keys=(key, other)
            )


def _write(result, asked, context):
    """Write what was computed beside the places asked for, and put it there when all of it is whole. ``context``: the
    host's, which gets the layers."""
    stage, written, final = OutputStage(asked.say), {}, {}
    try:
        wanted = [table for table in result.tables if asked.given(table.key)]
        total = max(sum(len(table) for table in wanted), 1)
        done = 0
        for table in wanted:
            share = (60.0 + 40.0 * done / total, 60.0 + 40.0 * (done + len(table)) / total)
            written[table.key], final[table.key] = _write_one(table, asked, context, stage, share)
            done += len(table)
        styles = _styled(wanted, written, asked, context)
        for document in result.documents:
            if asked.given(document.key):
                final[document.key] = asked.file(document.key)
                path = final[document.key]
                write_document(document, stage.document(document.key, path), path)
        asked.check_cancel()
        stage.commit()
    except BaseException:
        stage.discard()
        raise
    for table in wanted:
        if final[table.key] != written[table.key]:
            _load_on_completion(table.key, final[table.key], asked, context)
        saved_styles.attach(context, final[table.key], styles[table.key])
    return final


def _write_one(table, asked, context, stage, progress):
    """Write one layer: (where it is written, where it will stand), both as the host names destinations."""
    place = output_places.destination_text(asked.given(table.key))
    staged = stage.layer(table.key, place)
    given = asked.parameters
    if staged:
        beside = QgsProcessingOutputLayerDefinition(staged)
        beside.createOptions = getattr(asked.given(table.key), "createOptions", {})
        given = {**given, table.key: beside}
    try:
        sink, destination = asked.entry.parameterAsSink(given, table.key, context, table.fields(), table.wkb, table.crs)
    except QgsProcessingException as error:
        raise InputError(output_rows.not_written(table.key, error), keys=(table.key,)) from None
    if sink is None:
        raise InputError(asked.entry.invalidSinkError(asked.parameters, table.key), keys=(table.key,))
    try:
        output_rows.write_rows(sink, table, asked.feedback, progress)
    finally:
        # The file is complete only when the sink is gone; on the oldest host its spatial index is built now.
        sink.finalize() if hasattr(sink, "finalize") else None
        del sink
    missing = check_written(place, destination, table)
    if missing:
        asked.warn(missing, keys=(table.key,))
    if "record" in table.columns and place.lower().endswith(output_places.SHORT_TEXTS):
        asked.warn(
            tr(
                "{}: this format cuts texts at 254 characters, so the record of the run is not whole there; a "
                "GeoPackage keeps it."
            ).format(table.key),
            keys=(table.key,),
        )
    return destination, output_places.final_destination(place, destination) if staged else destination


def _load_on_completion(key, destination, asked, context):
    """Ask the desktop to load a layer where the form does, as the host's own sinks do."""
    given = asked.given(key)
    project = getattr(given, "destinationProject", None)
    if project is not None:
        name = given.destinationName or asked.entry.parameterDefinition(key).description()
        details = QgsProcessingContext.LayerDetails(name, project, key, QgsProcessingUtils.LayerHint.Vector)
        context.addLayerToLoadOnCompletion(destination, details)


def _styled(wanted, written, asked, context):
    """{key: style as told} of the tables, each saved beside its table where that is in a GeoPackage.

    Of several tables in one file all are read before the first style is saved: on the oldest host a GeoPackage that is
    open cannot be written to through a second opening of it. One that is alone in its file is opened once.
    """
    styles, files = {}, {}
    for table in wanted:
        files.setdefault(saved_styles.file_of(written[table.key]), []).append(table)
    for tables in files.values():
        layer = saved_styles.geopackage_layer(written[tables[0].key]) if len(tables) == 1 else None
        for table in tables:
            styles[table.key] = _told_style(table, written[table.key], layer, asked, context)
        for table in tables:
            _save_style(table.key, styles[table.key], layer or written[table.key], asked)
    return styles


def _told_style(table, destination, layer, asked, context):
    """The table's style, its record with the output's key and a fingerprint of the rows as written: from them an edit
    by hand would be known. ``layer``: of the table in its GeoPackage, None to look for it.
    """
    if not table.style.record:
        return table.style
    layer = layer or saved_styles.geopackage_layer(destination)
    read = None if is_trial(asked.feedback) else written_reading(destination, layer, context)
    return replace(table.style, record=record_with_output(table.style.record, table.key, read))


def _save_style(key, style, written, asked):
    """Save it beside the layer where that is in a GeoPackage; ``written``: the layer there, or its destination."""
    try:
        if isinstance(written, str):
            saved_styles.save_into_geopackage(written, style)
        else:
            saved_styles.save_style(written, style)
    except saved_styles.StyleNotSaved as error:
        asked.warn(tr("The style of {} could not be saved into the GeoPackage: {}").format(key, error), keys=(key,))
