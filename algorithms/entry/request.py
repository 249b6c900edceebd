"""What a run was asked for."""

from ..language.units import Units


def units(entry, parameters, context):
    """Units of the run: chainage as heights unless set."""
    height = entry.choice(parameters, "HEIGHT_UNIT", context) if entry.parameterDefinition("HEIGHT_UNIT") else ""
    chainage = entry.choice(parameters, "CHAINAGE_UNIT", context)
    return Units(height or chainage or "metre", chainage or height or "metre")
