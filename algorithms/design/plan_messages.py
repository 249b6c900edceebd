"""What a run of fitreference says of the line in plan."""

import numpy as np

from ..language.height_text import small_text
from ..language.number_text import number_text
from ..language.translation import tr
from .search_messages import give_or_take, set_aside_text, tell_suspects, test_failed, variance_sentence, words_of_plan


def tell_line_accuracy(run):
    """How accurate the places were taken to be, where the line is fitted."""
    if run.line.judged:
        run.asked.say(
            tr(
                "Line in plan: {}. The lateral errors are taken as independent of each other and of the heights; "
                "points of one setup share errors, and a step between two setups looks like a stretch that has moved."
            ).format(run.line.described)
        )


def line_doubted(fit):
    """Whether a test doubts the line in plan, or a station of it."""
    part = fit.sideways
    return part is not None and bool(np.any(part.suspected) or part.search.beyond or test_failed(part.search.solution))


def tell_line(run, fit):
    """The sentences on the line in plan of one fit, none where it is not fitted."""
    if fit.line is None:
        return
    tested, words, solution = fit.sideways, words_of_plan(), fit.line.solution
    tell = run.asked.warn if test_failed(solution) else run.asked.say
    tell(
        tr("{} '{}': {} stations, RMS {}{}; {}.").format(
            words.kind,
            fit.name,
            int(tested.search.kept.sum()),
            small_text(tested.rms, run.units),
            set_aside_text(tested.search),
            variance_sentence(run, solution, words),
        )
    )
    widths = solution.interval_factor * solution.deviations
    aside, turn = widths[0], float(np.degrees(widths[1]))
    azimuth = number_text(fit.line.place(run.ellipsoid)[2], 6)
    run.asked.say(
        tr("{} '{}': azimuth {}\u00b0{} at its middle{}{}.").format(
            words.kind,
            fit.name,
            azimuth,
            give_or_take(turn, number_text(turn, 6) + "\u00b0"),
            tr(", lateral position{}").format(give_or_take(aside, small_text(aside, run.units)))
            if np.isfinite(aside)
            else "",
            tr(", 95 %") if np.isfinite(aside) else "",
        )
    )
    tell_suspects(run, fit, tested, words)
