"""Row numbers as the file of a list counts them, headings and blank lines among them: what a person looks for there."""

import csv
import os

import numpy as np
from qgis.core import QgsVectorLayer

_TEXTS, _SHEETS = (".csv", ".tsv", ".txt"), (".xlsx", ".ods", ".xls")
_DELIMITERS = ";,\t|"
# Longer files are not read a second time only to count their blank lines.
_MOST_BYTES = 50_000_000


def file_rows(layer, ids):
    """Row number of each feature (n,) in the file it was read from, counted from 1.

    ``layer``: map layer or None; ``ids``: of its features in reading order (n,). A layer that is no list in a file is
    counted in reading order.
    """
    ids = np.asarray(ids, np.int64)
    plain = np.arange(1, len(ids) + 1)
    if not isinstance(layer, QgsVectorLayer):
        return plain
    if layer.providerType() == "delimitedtext":
        # This reader numbers its features by their lines.
        return ids
    path = layer.source().split("|")[0]
    ending = os.path.splitext(path)[1].lower()
    if layer.providerType() != "ogr" or ending not in (*_TEXTS, *_SHEETS):
        return plain
    if ending in _SHEETS:
        return ids
    unnamed = all(field.name() == f"field_{k}" for k, field in enumerate(layer.fields(), 1))
    headings = 0 if unnamed else 1
    lines = _lines(path)
    at = ids - 1 + headings
    return lines[at] if len(at) and at.min() >= 0 and at.max() < len(lines) else ids + headings


def _lines(path):
    """Line at which each record of a text file begins, counted from 1, without empty lines; [] for none."""
    try:
        if os.path.getsize(path) > _MOST_BYTES:
            return np.zeros(0, int)
        with open(path, encoding="utf-8", errors="replace", newline="") as file:
            first = file.readline()
            file.seek(0)
            reader = csv.reader(file, delimiter=max(_DELIMITERS, key=first.count))
            found, before = [], 0
            for record in reader:
                if record:
                    found.append(before + 1)
                before = reader.line_num
        return np.array(found, int)
    except (OSError, csv.Error, UnicodeError):
        return np.zeros(0, int)
