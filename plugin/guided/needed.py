"""What a run still needs: the answers that are missing, and those typed that cannot be read."""

from dataclasses import replace

from ...algorithms.core.errors import InputError
from ...algorithms.language.core_sentences import worded
from ...algorithms.language.translation import tr
from .requests import controls_of, label_of, read_answer


def unreadable(settings, stated=()):
    """{answer: sentence} of the typed answers that count and cannot be read; ``stated`` as in ``missing``."""
    typed = [] if stated and all(stated) else controls_of(settings.design)
    typed += ["tolerance", "sigma"]
    typed += ["line_tolerance"] if settings.line else []
    typed += ["undulation_value"] if settings.undulation == "constant" else []
    found = {}
    for answer in typed:
        try:
            read_answer(settings, answer)
        except InputError as error:
            found[answer] = worded(error)
    return found


def counting(settings, found):
    """The answers that count with what was understood of the data: the line is asked about where it can be judged."""
    return settings if found.has_positions else replace(settings, line="")


def missing(settings, stated=()):
    """The answers that a run cannot do without and that are empty. ``stated``: the design that each axis states itself,
    '' for none."""
    found = []
    if settings.undulation == "field" and not settings.undulation_field:
        found.append("undulation_field")
    if settings.undulation == "constant" and not settings.undulation_value:
        found.append("undulation_value")
    # Where every axis states its design itself, the answers on the design do not count.
    if not (stated and all(stated)):
        if settings.design == "inclined" and not settings.slope:
            found.append("slope")
        if settings.design == "reference" and not settings.reference:
            found.append("reference")
    return found


def why_not(settings, found):
    """Why no run can be started, in one sentence; '' where one can. ``found``: Understood."""
    settings = counting(settings, found)
    if not settings.drawn and not settings.axis:
        return tr("To run, choose the axis layer or have the axis drawn.")
    if not settings.heights:
        return tr("To run, choose the heights.")
    if found.busy:
        return tr("Looking at the data…")
    if not found.ready:
        if found.beside:
            labels = ", ".join("\u2018" + label_of(answer) + "\u2019" for answer in found.beside)
            return tr("To run, put right what is marked at {}.").format(labels)
        marked = next((part for part in ("structure", "heights") if _has_problem(getattr(found, part))), "heights")
        where = tr("Structure") if marked == "structure" else tr("Heights")
        return tr("To run, put right what is marked under \u2018{}\u2019.").format(where)
    stated = [axis.design for axis in found.axes]
    wrong = unreadable(settings, stated)
    if wrong:
        labels = ", ".join("\u2018" + label_of(answer) + "\u2019" for answer in wrong)
        return tr("To run, put right what is marked at {}.").format(labels)
    empty = missing(settings, stated)
    if empty:
        labels = ", ".join("\u2018" + label_of(answer) + "\u2019" for answer in empty)
        return tr("To run, give {}.").format(labels)
    return ""


def _has_problem(told):
    return any(kind == "problem" for kind, _ in told)
