"""Published limits n sqrt(K) for levelling, K the length in kilometres.

Only limits that two sources give alike are here; any other is typed (LIMIT_FACTOR).
"""

from dataclasses import dataclass

import numpy as np

from .errors import InputError, Word

# Checked with: relative accuracies, Civil Engineering Formulas (McGraw-Hill), equations 7.22-7.24, and Ghilani and
# Wolf, Elementary Surveying; sections, a page on level networks after FGDC's standards and the same textbook, and the
# table of USACE EM 1110-1-1005 after FGCC 1984; loops, the same page, for the first order a worked answer and a
# glossary's 4.0 mm.
_FGCC = "Federal Geodetic Control Committee, Standards and Specifications for Geodetic Control Networks, 1984"


@dataclass(frozen=True)
class LevellingClass:
    """A published limit: ``factor`` n in mm per square root of a kilometre.

    ``kind``: 'accuracy' (relative, of a height difference over the line), 'section' (forward against backward run) or
    'loop' (of a closed line); ``source``: the publication and its year.
    """

    name: str
    kind: str
    factor: float
    source: str


_ORDERS = ("first order class I", "second order class I", "second order class II", "third order")

CLASSES = (
    *(LevellingClass(name, "accuracy", n, _FGCC) for name, n in zip(_ORDERS, (0.5, 1.0, 1.3, 2.0))),
    *(LevellingClass(name, "section", n, _FGCC) for name, n in zip(_ORDERS, (3.0, 6.0, 8.0, 12.0))),
    *(LevellingClass(name, "loop", n, _FGCC) for name, n in zip(_ORDERS, (4.0, 6.0, 8.0, 12.0))),
)


def levelling_class(name, kind):
    """The LevellingClass of ``name`` and ``kind``, texts; InputError where there is none."""
    for entry in CLASSES:
        if (entry.name, entry.kind) == (name, kind):
            return entry
    known = ", ".join(entry.name for entry in CLASSES if entry.kind == kind)
    raise InputError("The levelling class '{}' is unknown for '{}'; known are {}.", name, kind, known or Word("none"))


def misclosure_limit(factor, length):
    """Limit n sqrt(K), metres, for lines of ``length`` metres; ``factor`` n in mm per square root of a kilometre.

    InputError where either is negative or not a number.
    """
    factor, length = np.asarray(factor, float), np.asarray(length, float)
    if not all(np.all(np.isfinite(values) & (values >= 0.0)) for values in (factor, length)):
        raise InputError("A misclosure limit needs a factor and a length that are not negative.")
    limit = 1e-3 * factor * np.sqrt(length / 1000.0)
    return float(limit) if limit.ndim == 0 else limit
