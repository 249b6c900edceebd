"""Published limits n sqrt(K) for levelling, K the length in kilometres."""

from dataclasses import dataclass

import numpy as np

from .errors import InputError

_FGCC = "Federal Geodetic Control Committee (FGCC) 1984, section 3.5, limits from memory"
_FORMULAS = "FGCC 1984 as given in Civil Engineering Formulas (McGraw-Hill), equations 7.22-7.24"


@dataclass(frozen=True)
class LevellingClass:
    """A published limit: ``factor`` n in mm per square root of a kilometre.

    ``kind``: 'accuracy' (relative, of a height difference over the line), 'section' (forward against backward run),
    'loop' (of a closed line) or 'misclosure' (the source does not tell section from loop); ``source``: where it is
    published.
    """

    name: str
    kind: str
    factor: float
    source: str


_ORDERS = (
    "first order class I",
    "first order class II",
    "second order class I",
    "second order class II",
    "third order",
)

CLASSES = (
    *(LevellingClass(name, "accuracy", n, _FORMULAS) for name, n in zip(_ORDERS, (0.5, 0.7, 1.0, 1.3, 2.0))),
    *(LevellingClass(name, "section", n, _FGCC) for name, n in zip(_ORDERS, (3.0, 4.0, 6.0, 8.0, 12.0))),
    *(LevellingClass(name, "loop", n, _FGCC) for name, n in zip(_ORDERS, (4.0, 5.0, 6.0, 8.0, 12.0))),
    LevellingClass("national first order", "misclosure", 4.0, "instructions of a national height datum, 4 sqrt(K)"),
    LevellingClass("national third order", "misclosure", 12.0, "paper on the AUSGeoid, 12 sqrt(K)"),
    LevellingClass("army second order", "misclosure", 8.4, "army course EN0593, 8.4 sqrt(K)"),
    LevellingClass("army rejection", "misclosure", 9.0, "army course EN0593, 9 sqrt(K)"),
)


def levelling_class(name, kind):
    """The LevellingClass of ``name`` and ``kind``, texts; InputError where there is none."""
    for entry in CLASSES:
        if (entry.name, entry.kind) == (name, kind):
            return entry
    known = ", ".join(entry.name for entry in CLASSES if entry.kind == kind)
    raise InputError(f"The levelling class '{name}' is unknown for '{kind}'; known are {known or 'none'}.")


def misclosure_limit(factor, length):
    """Limit n sqrt(K), metres, for lines of ``length`` metres; ``factor`` n in mm per square root of a kilometre.

    InputError where either is negative or not a number.
    """
    factor, length = np.asarray(factor, float), np.asarray(length, float)
    if not all(np.all(np.isfinite(values) & (values >= 0.0)) for values in (factor, length)):
        raise InputError("A misclosure limit needs a factor and a length that are not negative.")
    limit = 1e-3 * factor * np.sqrt(length / 1000.0)
    return float(limit) if limit.ndim == 0 else limit
