"""What the panel has been told, kept in the project."""

import json
from dataclasses import asdict, dataclass, fields

from qgis.core import QgsProject

SCOPE, KEY = "tautline", "guided_run"


@dataclass(frozen=True)
class Settings:
    """Answers as given: layers by their ids in the project, numbers as typed; '' is 'found by default'."""

    axis: str = ""
    drawn: bool = False
    heights: str = ""
    station_field: str = ""
    height_field: str = ""
    offset_field: str = ""
    axis_name_field: str = ""
    height_unit: str = "metre"
    chainage_unit: str = ""
    undulation: str = "unknown"
    undulation_field: str = ""
    undulation_value: str = ""
    design: str = "chord"
    chainage_a: str = ""
    height_a: str = ""
    chainage_b: str = ""
    height_b: str = ""
    slope: str = ""
    reference: str = ""
    tolerance: str = ""
    sigma: str = ""
    line: str = ""
    line_tolerance: str = ""
    test_shape: bool = False
    fit: bool = False
    one_plane: bool = False
    draw: bool = False
    place: str = ""


def saved(project=None):
    """Settings kept in ``project`` (default: the open one), None where there are none that can be read."""
    text, found = (project or QgsProject.instance()).readEntry(SCOPE, KEY, "")
    if not found:
        return None
    try:
        values = json.loads(text)
    except ValueError:
        return None
    if not isinstance(values, dict):
        return None
    defaults = Settings()
    known = {
        f.name: values[f.name]
        for f in fields(Settings)
        if isinstance(values.get(f.name), type(getattr(defaults, f.name)))
    }
    return Settings(**known)


def save(settings):
    """Keep ``settings`` in the open project, which is changed by it where they differ from those kept."""
    if saved() != settings:
        QgsProject.instance().writeEntry(SCOPE, KEY, json.dumps(asdict(settings), sort_keys=True))
