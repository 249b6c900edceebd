"""Records of runs as a report takes them: data from a file, of which only what has the right kind is kept."""

import json

_TEXTS = ("entry", "height_system", "undulation_source")
_AXIS_NUMBERS = ("slope", "chainage_height", "refraction", "tolerance")
_AXIS_TEXTS = ("design", "earth", "horizon")


def _dict(value):
    return value if isinstance(value, dict) else {}


def _number(value):
    return isinstance(value, (int, float)) and not isinstance(value, bool) and value == value


def _axis(given):
    axis = {key: given[key] for key in _AXIS_TEXTS if isinstance(given.get(key), str)}
    axis.update({key: float(given[key]) for key in _AXIS_NUMBERS if _number(given.get(key))})
    controls = given.get("controls")
    axis["controls"] = (
        [
            one
            for one in controls
            if isinstance(one, dict) and _number(one.get("chainage")) and _number(one.get("height"))
        ]
        if isinstance(controls, list)
        else []
    )
    return axis


def clean_record(given):
    """A record with texts, numbers and dicts where these are due; all else is left out. ``given``: a dict, or JSON
    text.
    """
    if isinstance(given, str):
        try:
            given = json.loads(given or "{}")
        except ValueError:
            given = {}
    given = _dict(given)
    record = {key: given[key] for key in _TEXTS if isinstance(given.get(key), str)}
    record["axes"] = {str(name): _axis(one) for name, one in _dict(given.get("axes")).items() if isinstance(one, dict)}
    for key in ("units", "versions"):
        record[key] = {str(name): value for name, value in _dict(given.get(key)).items() if isinstance(value, str)}
    record["parameters"] = {
        str(name): value
        for name, value in _dict(given.get("parameters")).items()
        if isinstance(value, (str, int, float, bool))
    }
    return record if "entry" in record or record["axes"] else {}
