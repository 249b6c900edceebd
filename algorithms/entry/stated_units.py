"""The units of a run: what the form, the record of the layer and the headings of its columns state, told once each.

What passes between entries is carried once: a form that contradicts the record is refused, both named; where nothing
states a unit it is taken as metre, and the log says so.
"""

from ..core.errors import InputError
from ..core.headings import unit_in_heading, units_agree
from ..core.units import METRES
from ..language.translation import tr
from ..language.units import Units, said_unit


def stated_units(asked, record, layer, heights=(), chainages=(), *, chainage_key="CHAINAGE_UNIT", beside=()):
    """The Units of a run on one layer.

    ``record``: RunRecord of the run that made it; ``layer``: its name; ``heights``, ``chainages``: headings (names and
    aliases) of the columns that are read; ``beside``: (RunRecord, name) of further layers whose heights are read or
    stand beside the run's own. Chainages are in the unit of heights where nothing tells theirs. InputError where two
    statements contradict each other, and for a heading in a unit that is not read.
    """
    recorded = [(record.height_unit, layer), *((one.height_unit, name) for one, name in beside)]
    height, told = _stated(asked, "HEIGHT_UNIT", recorded, layer, heights)
    chainage, _ = _stated(asked, chainage_key, [(record.chainage_unit, layer)], layer, chainages)
    if not told:
        if chainage not in ("", "metre", asked.choice(chainage_key)):
            raise InputError(
                tr("Layer '{}': its chainages are in '{}', and nothing states the unit of heights; give it.").format(
                    layer, chainage
                ),
                keys=("HEIGHT_UNIT",),
            )
        height = "metre"
        asked.say(tr("Layer '{}': nothing states the unit of heights; taken as metre (HEIGHT_UNIT).").format(layer))
    return Units(height, chainage or height)


def height_unit_stated(asked, record):
    """Whether form or record state a unit of heights."""
    return bool(asked.choice("HEIGHT_UNIT") or record.height_unit)


def _stated(asked, key, recorded, layer, headings):
    """(unit, whether it is told) by the parameter ``key``, what is ``recorded``, each (unit, name of the layer), and
    the headings; '' where none tells it."""
    typed, says = asked.choice(key), []
    if typed:
        says.append((typed, tr("{} is '{}'").format(key, typed), True))
    for unit, name in recorded:
        if unit:
            says.append((unit, tr("the record of layer '{}' says '{}'").format(name, unit), True))
    for heading in dict.fromkeys(headings):
        unit = unit_in_heading(heading)
        if unit and unit not in METRES:
            raise InputError(
                tr(
                    "Layer '{}': the heading '{}' says {}; metres and feet are read, so convert the column first."
                ).format(layer, heading, said_unit(unit)),
                keys=(key,),
            )
        if unit:
            says.append((unit, tr("the heading '{}' of layer '{}' says '{}'").format(heading, layer, unit), False))
    for number, (unit, text, exact) in enumerate(says):
        for other, before, also in says[:number]:
            # 'ft' in a heading stands for either foot; form and record name one of them.
            if not (unit == other if exact and also else units_agree(unit, other)):
                raise InputError(
                    tr("{}{}, but {}; they cannot both be right.").format(before[:1].upper(), before[1:], text),
                    keys=(key,),
                )
    # An exact statement counts before a heading.
    return (says[0][0], True) if says else ("", False)
