"""A typed list as a layer: a table without geometry, texts as typed, in the GeoPackage of the guided run."""

import os

from qgis.core import QgsFeature, QgsFeatureRequest, QgsProject, QgsProviderRegistry, QgsVectorLayer

from ...algorithms.boundary.cells import as_text
from ...algorithms.core.errors import InputError
from ...algorithms.language.translation import tr
from .drawn_axis import kept

_MARK = "tautline/typed_list"
_FIELDS = {"station": 60, "height": 60, "offset": 60, "remark": 254, "axis": 120}
_TABLE = "typed_list"


def is_typed_list(layer):
    """Whether a layer (or None) is a list that was typed here and still has its columns."""
    if not isinstance(layer, QgsVectorLayer) or not layer.customProperty(_MARK, False):
        return False
    names = {field.name() for field in layer.fields()}
    return names >= set(_FIELDS)


def lines_of(layer):
    """[{column: text}] of a typed list, in its order."""
    return [
        {column: as_text(feature[column]) for column in _FIELDS} for feature in layer.getFeatures(QgsFeatureRequest())
    ]


def written(layer, lines, place):
    """The layer that holds ``lines`` [{column: text}] from now on: ``layer`` itself, or where that is None a new one in
    the project, in the GeoPackage ``place`` ('': temporary). Raises InputError; the layer then is as it was."""
    _check_lengths(lines)
    if layer is not None:
        _rewrite(layer, lines)
        return layer
    columns = "&".join(f"field={name}:string({length})" for name, length in _FIELDS.items())
    layer = QgsVectorLayer(f"NoGeometry?{columns}", tr("Typed list"), "memory")
    layer.dataProvider().addFeatures(_features(layer, lines))
    if place:
        if not os.path.isdir(os.path.dirname(place) or "."):
            raise InputError(tr("There is no folder '{}' for the list.").format(os.path.dirname(place)))
        layer = kept(layer, place, _free_table(place))
    layer.setCustomProperty(_MARK, True)
    QgsProject.instance().addMapLayer(layer)
    return layer


def _check_lengths(lines):
    for number, line in enumerate(lines, 1):
        for column, length in _FIELDS.items():
            if len(line.get(column, "")) > length:
                raise InputError(
                    tr("Row {}: the text is longer than the {} letters of its column.").format(number, length)
                )


def _features(layer, lines):
    features = []
    for line in lines:
        feature = QgsFeature(layer.fields())
        for column in _FIELDS:
            feature[column] = line.get(column) or None
        features.append(feature)
    return features


def _rewrite(layer, lines):
    """Put ``lines`` in place of what the table holds, as one edit; where it fails the reasons are told."""
    if layer.isEditable():
        raise InputError(tr("The layer '{}' is being edited; save or discard its changes first.").format(layer.name()))
    if not layer.startEditing():
        raise InputError(tr("The layer '{}' cannot be edited.").format(layer.name()))
    layer.deleteFeatures(layer.allFeatureIds())
    layer.addFeatures(_features(layer, lines))
    if not layer.commitChanges():
        reasons = "; ".join(layer.commitErrors())
        layer.rollBack()
        raise InputError(tr("The list could not be written into layer '{}': {}").format(layer.name(), reasons))


def _free_table(place):
    """A table name that the GeoPackage does not have: another typed list is never written over."""
    taken = set()
    if os.path.exists(place):
        metadata = QgsProviderRegistry.instance().providerMetadata("ogr")
        taken = {part.name().lower() for part in metadata.querySublayers(place)}
    name, number = _TABLE, 1
    while name in taken:
        number += 1
        name = f"{_TABLE}_{number}"
    return name
