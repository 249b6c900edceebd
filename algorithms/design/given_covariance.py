"""A covariance of the stations' heights from an adjustment of their levelling, matched by name (method page 6)."""

from dataclasses import dataclass
from typing import Optional

import numpy as np

from ..boundary.input_fields import named_field
from ..boundary.tables import read_table
from ..core.covariance import Covariance
from ..core.covariance_text import covariance_of
from ..core.errors import InputError
from ..language.number_text import listed
from ..language.translation import tr
from ..structure.named_points import NAMES


@dataclass(frozen=True)
class GivenCovariance:
    """``names``, ``texts``: rows of the table; ``stations``: name of each station (n,); ``sigma``: of a height beside
    the levelling, metres, None without; ``layer``: name of the table.
    """

    names: list
    texts: list
    stations: list
    sigma: Optional[float]
    layer: str

    def covariance(self, rows):
        """Covariance of some stations, square metres; InputError for one that the table lacks or holds
        without error.
        """
        wanted = [self.stations[row] for row in rows]
        try:
            matrix = covariance_of(self.names, self.texts, wanted)
        except InputError as error:
            raise error.reworded(tr("Layer '{}': {}").format(self.layer, error)) from None
        if self.sigma is not None:
            matrix = matrix + np.eye(len(matrix)) * self.sigma**2
        held = np.flatnonzero(np.diag(matrix) <= 0.0)
        if len(held):
            raise InputError(
                tr(
                    "Layer '{}': point '{}' was held fixed and has no standard deviation; give SIGMA, that of a height "
                    "beside the levelling."
                ).format(self.layer, wanted[held[0]]),
                keys=("SIGMA",),
            )
        return Covariance(np.diag(matrix).copy(), matrix)


def given_covariance(asked, source, sigma):
    """The table of COVARIANCE with the names of the stations in ``source``; None where none is given.

    ``sigma``: SIGMA in metres, or None.
    """
    table = asked.optional_source("COVARIANCE")
    if table is None:
        return None
    fields = {name: named_field(table, "", "", (name,)) for name in ("point", "covar")}
    missing = [name for name, field in fields.items() if field < 0]
    if missing:
        raise InputError(
            tr("Layer '{}' is no covariance: it lacks the field {}.").format(table.sourceName(), listed(missing))
        )
    naming = named_field(source, asked.text("NAME_FIELD"), "NAME_FIELD", NAMES)
    if naming < 0:
        raise InputError(
            tr("Layer '{}' has no field {}; choose the field with the stations' names (NAME_FIELD).").format(
                source.sourceName(), listed([f"'{name}'" for name in NAMES])
            ),
            keys=("NAME_FIELD",),
        )
    rows = read_table(table, {}, fields, asked.feedback).columns
    stations = read_table(source, {}, {"name": naming}, asked.feedback).columns["name"]
    return GivenCovariance(rows["point"], rows["covar"], stations, sigma, table.sourceName())
