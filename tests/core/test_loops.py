"""Misclosures of a level net: a triangle levelled with known errors, one line twice, between two benchmarks."""

import numpy as np
import pytest

from tautline.algorithms.core.level_net import level_net
from tautline.algorithms.core.loops import loop_misclosures, section_misclosures


def net():
    """A-B-C-A closes to 5 mm; B-C is levelled twice, 2 mm apart; C-D hangs on the triangle."""
    return level_net(
        list("ABCBC"),
        list("BCACD"),
        np.array([1.000, 2.003, -2.998, 2.001, 4.0]),
        np.array([400.0, 300.0, 500.0, 300.0, 700.0]),
        np.array([0.002, 0.001, 0.002, 0.001, 0.003]),
    )


def test_a_line_levelled_twice():
    (section,) = section_misclosures(net())
    assert section.kind == "section" and section.length == 300.0
    assert abs(section.value) == pytest.approx(0.002, abs=1e-12)
    assert section.deviation == pytest.approx(np.hypot(0.001, 0.001), rel=1e-12)


def test_a_loop_and_the_way_between_benchmarks():
    (loop,) = [one for one in loop_misclosures(net(), {}) if one.kind == "loop"]
    # Ways meet at C alone, where D hangs on.
    assert (
        loop.path == ("C", "C")
        and {line for line, _ in loop.lines} >= {0, 2}
        and abs(loop.value) == pytest.approx(0.005, abs=1e-12)
    )
    assert loop.length == 1200.0 and loop.deviation == pytest.approx(np.sqrt(0.002**2 + 0.001**2 + 0.002**2), rel=1e-12)
    # A at 10.000 and D at 17.010: by the shorter way, A-C-D, 2.998 + 4.000, 12 mm short of the benchmarks.
    fixed = {0: 10.000, 3: 17.010}
    between = [one for one in loop_misclosures(net(), fixed) if one.kind == "benchmarks"]
    assert min(abs(one.value) for one in between) == pytest.approx(0.012, abs=1e-12)
