"""Whether a layer was made in the unit of heights that a run takes it for."""

from .recorded_run import recorded_parameter, recorded_unit
from .texts import tr


def warn_of_unit(record, name, unit, feedback):
    """Warn where the ``record`` of the run that made layer ``name`` tells another unit of heights than ``unit``."""
    made = recorded_unit(record, "height_name") or recorded_parameter(record, "HEIGHT_UNIT")
    if made and made != unit:
        feedback.pushWarning(
            tr("Layer '{}' was made with heights in '{}', but HEIGHT_UNIT is '{}'; check it.").format(name, made, unit)
        )
