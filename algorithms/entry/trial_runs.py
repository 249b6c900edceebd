"""Runs whose outputs are only looked at and thrown away: what is made for later use is left out of them."""

_MARK = "tautline_trial"


def mark_as_trial(feedback):
    """Say of the run with this ``feedback`` that it is a trial."""
    feedback.setProperty(_MARK, True)


def is_trial(feedback):
    """Whether the run with this ``feedback`` is a trial."""
    return bool(feedback.property(_MARK))
