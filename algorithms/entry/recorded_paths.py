"""Paths of a run's record as a page shows them: without the folder that all of them lie under."""

import os
import re

from ..language.translation import tr


def database_path(text):
    """The file that a destination 'ogr:dbname='file' table="name" (geom)' names; '' where it names none."""
    found = re.search(r"dbname='((?:[^'\\]|\\.)*)'|dbname=(\S+)", text)
    return re.sub(r"\\([\\'])", r"\1", found.group(1) or found.group(2) or "") if found else ""


def _paths(parameters):
    for value in parameters.values():
        if isinstance(value, list):
            yield from _paths(dict(enumerate(value)))
            continue
        text = str(value)
        found = database_path(text) if text.startswith("ogr:") else text.split("|")[0]
        if os.path.isabs(found):
            yield found


def common_folder(records):
    """The folder that all files of the records lie under, with its separator; '' where there is none worth naming."""
    folders = [os.path.dirname(path) for record in records for path in _paths(record.parameters)]
    if not folders:
        return ""
    try:
        folder = os.path.commonpath(folders)
    except ValueError:  # several drives
        return ""
    return folder + os.sep if len(folder) > 3 else ""


def shortened(value, folder):
    """A value of a record, a text, a list or a dictionary of these, without ``folder`` in its texts."""
    if isinstance(value, dict):
        return {key: shortened(one, folder) for key, one in value.items()}
    if isinstance(value, (list, tuple)):
        return [shortened(one, folder) for one in value]
    if isinstance(value, str) and re.search(r"[?&]uid=\{", value):
        return tr("a layer in memory: save it first")
    return value.replace(folder, "") if folder and isinstance(value, str) else value
