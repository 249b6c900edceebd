"""What a run of testcurvature says."""

import numpy as np

from ..entry.messages import OTHER_SHAPE, SET_ASIDE
from ..language.height_text import small_texts
from ..language.number_text import listed
from ..language.translation import tr
from ..language.units import UNIT_LABELS
from ..structure.geoid_grid import say_coarse
from .curvature_sentences import geoid_sentence, leg_title, radius_sentence, verdict_sentence

MOST_TOLD = 40


def tell_curvature(run, tested):
    """Push the sentences of a run."""
    say, points = run.asked.say, run.structure.points
    say(
        tr("Understood: {} stations of layer '{}'; heights from {} in {}; {}.").format(
            len(points),
            points.name,
            run.heights.described,
            UNIT_LABELS[run.units.height_name],
            run.accuracies.described,
        )
    )
    say(run.system.described)
    say_coarse(run.asked, run.system, [one.profile.length for one in tested])
    for one in tested[:MOST_TOLD]:
        say(verdict_sentence(leg_title(one), one.test, run))
        say(radius_sentence(one.test) + " " + geoid_sentence(one.test))
        say(
            tr("RMS: {}.").format(
                ", ".join(
                    tr("{} {}").format(tr(m.name), text)
                    for m, text in zip(one.test.models, small_texts([m.rms for m in one.test.models], run.units))
                )
            )
        )
        if one.beyond:
            run.asked.warn(
                tr(
                    "{}: more than {} of {} stations would have to be set aside as blunders, so none was: the heights "
                    "do not follow one curve within their standard deviations."
                ).format(leg_title(one), one.beyond, len(one.kept)),
                OTHER_SHAPE,
                about=(one.name,),
            )
        aside = np.flatnonzero(~one.kept)
        if len(aside):
            run.asked.warn(
                tr("{}: suspected of a blunder and set aside: {}.").format(
                    leg_title(one), listed(run.notation.all_shown(one.profile.chainage[aside]))
                ),
                SET_ASIDE,
                about=(one.name,),
            )
        for rows in one.moved:
            run.asked.warn(
                tr(
                    "{}: {} neighbours from {} to {} are set aside on one side: that looks like a stretch that has "
                    "moved, not like blunders. The shape is determined from the other stations."
                ).format(leg_title(one), len(rows), *run.notation.all_shown(one.profile.chainage[rows[[0, -1]]])),
                SET_ASIDE,
                about=(one.name,),
            )
    if len(tested) > MOST_TOLD:
        say(tr("{} more: see the table.").format(len(tested) - MOST_TOLD))
