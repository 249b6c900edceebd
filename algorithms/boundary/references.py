"""Rows of a reference layer."""

from dataclasses import dataclass

import numpy as np
from qgis.core import QgsFeatureRequest

from ..core.errors import InputError
from ..language.number_text import listed
from ..language.translation import tr
from .cancel import check_cancel
from .cells import as_number, as_text
from .input_fields import field_indices
from .readings import note, reading
from .tables import UNCHECKED

# The fields that fix a plane: a layer with all of them holds references.
NEEDED = ("name", "lat0", "lon0", "h0", "nx", "ny", "nz")
_TEXTS = ("h_system", "undul", "h_unit", "axes", "datum")


@dataclass(frozen=True)
class ReferenceRow:
    """A row of a reference layer: its name and the cells that fix the plane."""

    name: str
    values: dict

    def serves(self, axis):
        """True where the reference is of this axis by its name, or of a group of axes that holds it."""
        return axis == self.name or axis in [name.strip() for name in self.values["axes"].split(";")]


def holds_references(fields):
    """Whether a layer with these ``fields`` can hold references."""
    return set(NEEDED) <= {field.name().lower() for field in fields}


def read_references(source, feedback):
    """Rows of a reference layer; InputError where it lacks the fields that fix a plane."""
    needed = NEEDED
    indices = field_indices(source)
    missing = [name for name in needed if name not in indices]
    if missing:
        raise InputError(
            tr("Layer '{}' is not a reference layer: it lacks the field {}.").format(
                source.sourceName(), listed(missing)
            )
        )
    rows = []
    request = QgsFeatureRequest().setFlags(QgsFeatureRequest.Flag.NoGeometry)
    for row, feature in enumerate(source.getFeatures(request, UNCHECKED), 1):
        check_cancel(feedback)
        values = {name: as_number(feature[indices[name]], source, indices[name], row) for name in needed[1:]}
        if not np.all(np.isfinite(list(values.values()))):
            raise InputError(tr("Layer '{}', row {}: the plane is not complete.").format(source.sourceName(), row))
        for name in _TEXTS:
            values[name] = as_text(feature[indices[name]]) if name in indices else ""
        rows.append(ReferenceRow(as_text(feature[indices["name"]]), values))
    if not rows:
        raise InputError(tr("Layer '{}' has no reference.").format(source.sourceName()))
    names, numbers = [field.name() for field in source.fields()], needed[1:]
    texts = {names[indices[key]]: [row.values[key] for row in rows] for key in _TEXTS if key in indices}
    texts[names[indices["name"]]] = [row.name for row in rows]
    columns = {names[indices[key]]: [row.values[key] for row in rows] for key in numbers}
    note(source, reading(len(rows), columns, texts))
    return rows
