"""What has been read of each source: the readers note it here, the record of the run takes it from here.

A note lives as long as the source it is about, so that two runs at once know nothing of each other.
"""

import weakref

import numpy as np

from ..core.input_record import InputRecord, fingerprint

_READ = weakref.WeakKeyDictionary()


def note(source, reading):
    """Keep what was read of a ``source`` (the host's feature source or raster layer): InputRecord without a source."""
    known = _READ.setdefault(source, [])
    if reading not in known:
        known.append(reading)


def readings_of(source):
    """All that was read of a source, each once: tuple of InputRecord."""
    return tuple(_READ.get(source, ()))


def reading(rows, numbers, texts, coordinates=(), shape=""):
    """InputRecord of columns: ``numbers`` {field name: array (rows,)}, ``texts`` {field name: list}, ``coordinates``:
    arrays. Fields count in the order of their names, whatever order they were asked for in."""
    arrays = [*coordinates, *(np.asarray(numbers[name], float) for name in sorted(numbers))]
    found = fingerprint(arrays, [texts[name] for name in sorted(texts)])
    return InputRecord(rows=rows, numbers=tuple(sorted(numbers)), texts=tuple(sorted(texts)), shape=shape, hash=found)
