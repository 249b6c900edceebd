"""What comparisons of surveys and the chain from levelling owe, with fewer surveys than the benchmark has; seeded, so
that the counts repeat. Bounds are four binomial deviations about what is owed."""

import pathlib
import sys

import numpy as np
import pytest

sys.path.insert(0, str(pathlib.Path(__file__).resolve().parents[1] / "benchmarks"))
import simulated_changes as changes  # noqa: E402
import simulated_levelling as levelling  # noqa: E402

NUMBER = 200


def wide(share, number=NUMBER):
    return 4.0 * (share * (1.0 - share) / number) ** 0.5


@pytest.mark.parametrize("covariance", list(changes.COVARIANCES))
@pytest.mark.parametrize("part", list(changes.PARTS))
def test_common_movement_and_unmoved_stations(covariance, part):
    dice = np.random.default_rng(1)
    found = changes.changes_of_axes(dice, NUMBER, covariance=covariance, part=part, tilt=True)
    hardest = covariance == "independent" and "end" in part
    # A run set aside in error takes ten stations at once: so the bounds are those of axes.
    assert found.share("unmoved flagged") <= (0.01 if hardest else 0.003) + wide(0.005) / 2
    for name in ("shift false", "tilt false"):
        assert abs(found.share(name) - 0.05) <= wide(0.05) + 0.02 * hardest
    if "nothing" in part:
        assert abs(found.share("not congruent") - 0.05) <= wide(0.05)
    else:
        assert found.share("moved found") >= 0.95


@pytest.mark.parametrize("line", changes.LINES)
@pytest.mark.parametrize("part", list(changes.PARTS))
def test_lateral_bending_is_free_of_the_surveys_own_lines(line, part):
    """The same false alarms whatever line each survey has. Changes by themselves keep what they owe (0.1 %, Baarda)
    from one line for all, and not from chords: so these are not judged."""
    found = changes.lateral_changes_of_axes(np.random.default_rng(6), NUMBER, line=line, part=part)
    assert found.share("unmoved flagged") <= (0.01 if "end" in part else 0.003) + wide(0.005) / 2
    assert "nothing" in part or found.share("moved found") >= 0.95
    assert (found.share("changes flagged") > 0.001 + wide(0.001, 31 * NUMBER)) == (line == "chord")


def test_line_through_adjusted_levelling_holds_the_truth():
    found = levelling.chain(np.random.default_rng(4), NUMBER)
    assert abs(found.share("height, with the covariance") - 0.95) <= wide(0.95)
    assert found.share("height, standard deviations alone") < 0.8


def test_chance_within_is_as_stated():
    found = levelling.chances(np.random.default_rng(5), NUMBER)
    assert found.share("within, with the controls' errors") == pytest.approx(0.95, abs=0.01)
