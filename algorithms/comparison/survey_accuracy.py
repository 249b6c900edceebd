"""How accurate the heights of one survey are, and what its levelling makes them share (method page 7)."""

from dataclasses import dataclass
from typing import Optional

import numpy as np

from ..core.change_covariance import GivenChanges, LevelledChanges
from ..core.covariance import Covariance, levelled
from ..core.errors import InputError
from ..core.plain_number import plain_number
from ..language.number_text import counted, plain_text
from ..language.translation import tr

# A parameter for all surveys and that with a place for each.
LISTS = {"SIGMA": "SIGMAS", "SIGMA_KM": "SIGMAS_KM", "SIGMA_LINE": "SIGMAS_LINE"}


@dataclass(frozen=True)
class SurveyAccuracy:
    """``own``: standard deviation of each height by itself, metres (n,), NaN unknown; ``km``: of levelling over 1 km,
    metres, or None; ``matrix``: covariance of all heights, square metres (n, n), or None; ``described``: a text."""

    own: np.ndarray
    km: Optional[float]
    matrix: Optional[np.ndarray]
    described: str

    @property
    def shares(self):
        """Whether it is known what the heights share."""
        return self.km is not None or self.matrix is not None

    def deviations(self, distance):
        """Standard deviation of each height (n,), metres; ``distance``: from the levelling's origin, metres (n,)."""
        if self.matrix is not None:
            return np.sqrt(np.diag(self.matrix))
        walk = 0.0 if self.km is None else self.km**2 / 1000.0 * np.abs(distance)
        return np.sqrt(self.own**2 + walk)

    def of(self, rows, distance):
        """Covariance of some heights as a matrix, square metres, NaN for those whose deviation is not known;
        ``distance``: of these, from the origin, metres."""
        if self.matrix is not None:
            return self.matrix[np.ix_(rows, rows)]
        own = self.own[rows]
        if self.km is None or not np.all(np.isfinite(own)):
            return np.diag(own**2)
        return levelled(own, distance < 0.0, np.abs(distance), self.km).matrix


def change_covariance(first, rows, second, others, distance):
    """Covariance of the changes of stations in the order of their chainage: LevelledChanges or GivenChanges, None where
    a standard deviation is not known.

    ``first``, ``second``: SurveyAccuracy; ``rows``, ``others``: of the stations in each; ``distance``: along the axis
    from the levelling's origin, metres (n,), ascending, NaN where chainages are not known.
    """
    if first.matrix is None and second.matrix is None:
        own = first.own[rows] ** 2 + second.own[others] ** 2
        walk = ((first.km or 0.0) ** 2 + (second.km or 0.0) ** 2) / 1000.0
        return LevelledChanges(own, distance, walk) if np.all(np.isfinite(own)) else None
    matrix = first.of(rows, distance) + second.of(others, distance)
    return GivenChanges(Covariance(np.diag(matrix).copy(), matrix)) if np.all(np.isfinite(matrix)) else None


def checked_deviations(own, source, field, units):
    """``own``, metres (n,), of a field of ``source`` in its ``units``; InputError where one is not positive."""
    bad = np.flatnonzero(own <= 0.0)
    if len(bad):
        raise InputError(
            tr("Layer '{}', field '{}', row {}: {} is not a standard deviation; it must be greater than zero.").format(
                source.sourceName(), field, bad[0] + 1, plain_text(own[bad[0]] / units.height)
            )
        )
    return own


def stated(asked, key, number):
    """Numbers of a parameter ``key`` for all surveys and of its twin, a list with a place for each: (number,) of floats
    or None.

    ``key``: of LISTS; the list is its value, separated by semicolons, an empty place for the former.
    """
    for_all = asked.number(key)
    if for_all is not None and not for_all > 0.0:
        raise InputError(
            tr("{} is {}; it must be greater than zero, or empty.").format(key, plain_text(for_all)), keys=(key,)
        )
    own_key = LISTS[key]
    text = asked.text(own_key)
    if not text:
        return [for_all] * number
    parts = text.split(";")
    if len(parts) != number:
        raise InputError(
            tr("{} has {}, but there are {}.").format(
                own_key, counted(len(parts), tr("value"), tr("values")), counted(number, tr("survey"), tr("surveys"))
            ),
            keys=(own_key,),
        )
    return [_positive(part, own_key) if part.strip() else for_all for part in parts]


def _positive(text, key):
    value = plain_number(text)
    if value is None or not 0.0 < value < np.inf:
        raise InputError(
            tr("{}: '{}' is not a standard deviation; it must be a number greater than zero.").format(
                key, text.strip()
            ),
            keys=(key,),
        )
    return value
