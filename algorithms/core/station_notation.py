"""Station notation, 12+50 or 1+250, and station equations (method page 3)."""

import re
from dataclasses import dataclass

import numpy as np

from .errors import InputError

_TEXT = re.compile(
    r"^\s*(?:(?:sta(?:tion)?|ch(?:ainage)?)\s*[.:]?\s*)?(?P<sign>[-+\u2212]?)\s*"
    r"(?:(?P<whole>[0-9]+)\s*\+\s*(?P<rest>[0-9]+(?:\.[0-9]*)?)|(?P<bare>[0-9]+(?:\.[0-9]*)?|\.[0-9]+))"
    r"\s*(?:\(\s*(?P<region>[0-9]+)\s*\))?\s*$",
    re.IGNORECASE,
)
_STATION_LENGTH = {2: 100.0, 3: 1000.0}
# Written once: of a million stations the writing of these digits would cost more than all else about them.
_REST = {digits: [f"{k:0{digits}d}" for k in range(10**digits)] for digits in (2, 3)}
_FRACTION = {decimals: ["", *(f".{text}" for text in texts[1:])] for decimals, texts in _REST.items()}


def notation(text):
    """Read one station: returns (distance, region), in the unit the notation is written in.

    Two digits after the plus are stations of 100 units, three of 1000; a bare number is a distance.
    ``region`` is the number in brackets after it, None without. InputError for all else.
    """
    if isinstance(text, (int, float, np.number)) and not isinstance(text, bool) and np.isfinite(text):
        return float(text), None  # never by its text: a measured origin is 2.3e-09
    found = _TEXT.match(str(text))
    if not found:
        raise InputError("'{}' is not a station: expected such as 12+50, 1+250 or a distance.", text)
    sign = -1.0 if found["sign"] in ("-", "\u2212") else 1.0
    region = int(found["region"]) if found["region"] else None
    if found["bare"] is not None:
        return sign * float(found["bare"]), region
    digits = len(found["rest"].split(".")[0])
    if digits not in _STATION_LENGTH:
        raise InputError(
            "'{}' is not a station: after the plus stand two digits (stations of 100) or three (of 1000).", text
        )
    return sign * (float(found["whole"]) * _STATION_LENGTH[digits] + float(found["rest"])), region


def station_texts(distances, unit):
    """Normal notation of distances (n,) in ``unit``: 1+250 in metres, 12+50 in feet, with the sign before it.

    Rounded to 0.001 m or 0.01 ft; no decimals where the rounded distance is whole; '' for NaN. Returns a list.
    """
    length, digits, decimals = (1000, 3, 3) if unit == "metre" else (100, 2, 2)
    distances, parts = np.asarray(distances, float), 10**decimals
    known = np.isfinite(distances)
    counted = np.rint(np.abs(np.where(known, distances, 0.0)) * parts).astype(np.int64)
    whole, fraction = np.divmod(counted, parts)
    stations, rest = np.divmod(whole, length)
    negative = (distances < 0) & (counted > 0)
    rests, fractions = _REST[digits], _FRACTION[decimals]
    texts = [f"{a}+{rests[b]}{fractions[c]}" for a, b, c in zip(stations.tolist(), rest.tolist(), fraction.tolist())]
    for k in np.flatnonzero(negative | ~known).tolist():
        texts[k] = "-" + texts[k] if known[k] else ""
    return texts


def station_text(distance, unit):
    """Normal notation of one distance: see station_texts."""
    return station_texts([distance], unit)[0]


@dataclass(frozen=True)
class StationEquations:
    """Pairs back = ahead, in order along the axis, in one unit. Region 1 lies before the first pair.

    ``pairs``: tuple of (back, ahead). InputError where a pair lies behind the one before it.
    """

    pairs: tuple = ()

    def __post_init__(self):
        places, aheads = [], []
        for back, ahead in self.pairs:
            place = back if not places else places[-1] + back - aheads[-1]
            if places and place <= places[-1]:
                raise InputError("The station equation {:g} = {:g} lies behind the one before it.", back, ahead)
            places.append(place)
            aheads.append(ahead)
        object.__setattr__(self, "_places", np.array(places))
        object.__setattr__(self, "_aheads", np.array(aheads))

    def chainage(self, station, region=None):
        """Continuous chainage of a ``station`` in notation, in the unit the notation is written in.

        ``region``: the number in brackets, None without. InputError in a gap, or where it occurs twice.
        """
        if region is not None and not 1 <= region <= len(self.pairs) + 1:
            raise InputError("Stretch {} does not exist: there are {}.", region, len(self.pairs) + 1)
        found = []
        for number in range(len(self.pairs) + 1) if region is None else [region - 1]:
            chainage = station if number == 0 else self._places[number - 1] + station - self._aheads[number - 1]
            after = number == 0 or chainage >= self._places[number - 1]
            before = number == len(self.pairs) or chainage <= self._places[number]
            if after and before and not any(abs(chainage - other) < 1e-9 for other in found):
                found.append(chainage)
        if not found:
            raise InputError(
                "Station {:g} does not exist on this axis: it lies in the gap of a station equation.", station
            )
        if len(found) > 1:
            raise InputError(
                "Station {:g} occurs {} times because of a station equation: write its stretch in "
                "brackets behind it, such as 12+50 (2).",
                station,
                len(found),
            )
        return float(found[0])

    def station(self, chainage):
        """Station in notation at a continuous ``chainage``, both in one unit, and its region where the notation occurs
        twice, else None."""
        number = int(np.searchsorted(self._places, chainage, side="right"))
        value = chainage if number == 0 else chainage - self._places[number - 1] + self._aheads[number - 1]
        try:
            self.chainage(value)
            return value, None
        except InputError:
            return value, number + 1

    def texts(self, chainages, unit):
        """Normal notation at continuous ``chainages`` (n,), with the region where a notation would occur
        twice; a list.
        """
        if not self.pairs:
            return station_texts(chainages, unit)
        found = [self.station(chainage) for chainage in np.asarray(chainages, float).tolist()]
        texts = station_texts([value for value, _ in found], unit)
        return [f"{text} ({region})" if region and text else text for text, (_, region) in zip(texts, found)]

    def text(self, chainage, unit):
        """Normal notation at one continuous ``chainage`` in ``unit``: see station_texts."""
        return self.texts([chainage], unit)[0]


def station_equations(text):
    """StationEquations of a text 'back=ahead; back=ahead', each in station notation; InputError naming the pair that is
    unreadable."""
    pairs = []
    for part in filter(str.strip, str(text or "").split(";")):
        sides = part.split("=")
        if len(sides) != 2:
            raise InputError("The station equation '{}' is unreadable: expected back=ahead.", part.strip())
        pairs.append(tuple(notation(side)[0] for side in sides))
    return StationEquations(tuple(pairs))
