"""How a report can be made again: the toolbox calls of its records, for the command line and for Python."""

import os
import re
import shlex

from ..entry.recorded_chain import place_key
from ..entry.recorded_paths import shortened
from ..language.translation import tr


def records_behind(asked, records):
    """RunRecords of the runs on which those of ``records`` rest, as far as layers in GeoPackages tell; in the host's
    main thread."""
    found, waiting, seen = [], list(records), set()
    while waiting:
        for place in _local_geopackages(waiting.pop()):
            if place_key(place) not in seen:
                seen.add(place_key(place))
                behind = asked.record_behind(place)
                found.append(behind)
                waiting.append(behind)
    return found


def _local_geopackages(record):
    """Where the inputs of a recorded run came from, those in GeoPackages that are still there. A record is data:
    nothing else that it names is opened."""
    for one in (one for readings in record.inputs.values() for one in readings):
        path = one.source.split("|")[0]
        if path.lower().endswith(".gpkg") and os.path.isabs(path) and os.path.isfile(path):
            yield one.source


def quoted(text):
    """A word as a POSIX shell takes it, quoted as a person would."""
    if "'" not in text or "!" in text:
        return shlex.quote(text)
    return '"' + re.sub(r'([\\"$`])', r"\\\1", text) + '"'


def usable(record):
    """True where a record names an entry of this toolbox that can be called again."""
    return re.fullmatch(r"tautline:[a-z]+", record.entry) is not None


def command_lines(records, folder):
    """qgis_process lines, one for each record that can be called again."""
    lines = []
    for record in records:
        parts = [
            f"--{key}={quoted(_plain(shortened(one, folder)))}"
            for key, value in sorted(record.parameters.items())
            for one in (value if isinstance(value, list) else [value])
            if re.fullmatch(r"[A-Z0-9_]+", key)
        ]
        lines.append(" \\\n    ".join([f"qgis_process run {record.entry}", *parts]))
    return "\n".join(([f"cd {shlex.quote(folder)}"] if folder else []) + lines)


def _plain(value):
    return str(value).lower() if isinstance(value, bool) else str(value)


def python_lines(records, folder):
    """The same calls as Python typed in the desktop."""
    lines = ["import processing"] + ([f"import os\nos.chdir({folder!r})"] if folder else [])
    for record in records:
        given = [f"    {key!r}: {shortened(value, folder)!r}," for key, value in sorted(record.parameters.items())]
        lines.append("\n".join([f"processing.run({record.entry!r}, {{", *given, "})"]))
    return "\n".join(lines)


def versions_text(record):
    """'Tautline 0.1.0, QGIS 3.22, PROJ 9.1' of a record."""
    told = ", ".join(f"{name} {value}" for name, value in sorted(record.versions.items()))
    return told or tr("not recorded")
