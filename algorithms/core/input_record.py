"""What was read of an input, in a few numbers: from these an input is known to have changed since."""

import hashlib
from dataclasses import dataclass, replace

import numpy as np

# Of texts one after another, which no cell holds.
_BETWEEN = "\x1f"


@dataclass(frozen=True)
class InputRecord:
    """One reading of one input.

    ``source``: as the host opens it again; ``rows``: how many were read, -1 where it is not known; ``numbers``,
    ``texts``: names of the fields that were read as such; ``shape``: 'point', 'line', 'raster', or '' where no geometry
    was read; ``window``: of a raster its first row and the one after the last; ``hash``: of all that was read, '' where
    none was made; ``part``: True where only some of the rows were handed to the run (a selection, a filter);
    ``marks``: of the points' places as place_marks has them, '' where none were made.
    """

    source: str = ""
    rows: int = -1
    numbers: tuple = ()
    texts: tuple = ()
    shape: str = ""
    window: tuple = ()
    hash: str = ""
    part: bool = False
    marks: str = ""

    @property
    def fields(self):
        """Names of all fields that were read."""
        return tuple(dict.fromkeys((*self.numbers, *self.texts)))

    def of(self, source, part=False):
        """The same reading, of ``source`` (a text, without unit); ``part``: whether only some rows were read."""
        return replace(self, source=source, part=part)


def fingerprint(arrays, texts=()):
    """A hash in hexadecimal, 32 digits, of number ``arrays`` (any shapes) and lists of ``texts``, in their order.

    The bits count: -0.0 is not 0.0, and all NaN as the readers make them are one.
    """
    found = hashlib.blake2b(digest_size=16)
    for array in arrays:
        array = np.ascontiguousarray(array)
        found.update(f"{array.dtype.str}{array.shape}".encode())
        found.update(memoryview(array).cast("B") if array.size else b"")
    for column in texts:
        joined = _BETWEEN.join(column).encode("utf-8", "surrogatepass")
        found.update(f"{len(column)},{len(joined)}".encode())
        found.update(joined)
    return found.hexdigest()
