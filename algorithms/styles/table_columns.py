"""Columns of the attribute table: names with units, decimals, order."""

from qgis.core import QgsEditorWidgetSetup, QgsFields

from ..boundary.fields import CHAINAGE, DEGREE, FIELDS, HEIGHT, REAL, label_with_unit

DECIMALS = {HEIGHT: 4, CHAINAGE: 3, DEGREE: 5}
DECIMALS_WITHOUT_UNIT = 6
HIDDEN = ("record",)


def own_fields(fields, names):
    """Return those of ``fields`` (QgsFields) that the run wrote, as QgsFields: from the first of ``names`` on.

    The output's own fields follow the input's. An input field of such a name, a ``height`` say, is left alone, as its
    unit is not known.
    """
    start = fields.indexOf(names[0])
    own = QgsFields()
    for index in range(max(start, 0), fields.count() if start >= 0 else 0):
        if fields.at(index).name() in names:
            own.append(fields.at(index))
    return own


def name_columns(layer, own, height_unit, chainage_unit, titled=None):
    """Give the fields ``own`` of ``layer`` aliases with units, and their numbers a fixed count of decimals.

    ``titled``: {name: OutputField} of the fields that say another thing in this kind of layer than in others.
    """
    titled = titled or {}
    form = layer.editFormConfig()
    for name in own.names():
        index = layer.fields().indexOf(name)
        field = titled.get(name, FIELDS[name])
        layer.setFieldAlias(index, label_with_unit(field, height_unit, chainage_unit))
        if field.kind == REAL:
            decimals = DECIMALS.get(field.unit, DECIMALS_WITHOUT_UNIT)
            layer.setEditorWidgetSetup(index, QgsEditorWidgetSetup("Range", {"Precision": decimals, "AllowNull": True}))
            # The widget that shows few decimals would also cut a typed-over value to them; results are not typed in.
            form.setReadOnly(index, True)
    layer.setEditFormConfig(form)


def order_columns(layer, own):
    """Show the fields ``own`` before those of the input, and hide what nobody reads in a table."""
    table = layer.attributeTableConfig()
    table.update(layer.fields())
    columns = table.columns()
    for one in columns:
        one.hidden = one.hidden or one.name in HIDDEN and one.name in own.names()
    first = {name: place for place, name in enumerate(own.names())}
    table.setColumns(sorted(columns, key=lambda one: first.get(one.name, len(first))))
    layer.setAttributeTableConfig(table)
