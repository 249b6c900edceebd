"""Misclosures of sections and loops."""

import numpy as np
import pytest

from tautline.algorithms.core import loops
from tautline.algorithms.core.level_net import level_net
from tautline.algorithms.core.loops import loop_misclosures, section_misclosures


def net_of(rows):
    starts, ends, dh, length = zip(*rows)
    return level_net(starts, ends, dh, length, 0.001 * np.sqrt(np.array(length) / 1000.0))


def test_ls_02_has_three_loops():
    """LS-02's six lines between four points: 6 - 4 + 1 = 3 loops; the shortest, added up by hand."""
    net = net_of(
        [
            ("1", "2", -0.749, 1100.0),
            ("1", "3", -1.274, 1800.0),
            ("1", "4", -2.89, 1400.0),
            ("2", "3", -0.53, 1500.0),
            ("2", "4", -2.141, 1900.0),
            ("3", "4", -1.614, 900.0),
        ]
    )
    found = {frozenset(one.path): one for one in loop_misclosures(net, {})}
    by_hand = {"134": (0.002, 4100.0), "234": (0.003, 4300.0), "123": (0.005, 4400.0)}
    assert {frozenset(path) for path in by_hand} == set(found)
    for path, (value, length) in by_hand.items():
        one = found[frozenset(path)]
        assert abs(one.value) == pytest.approx(value, abs=1e-12) and one.length == pytest.approx(length, abs=1e-9)
        assert one.deviation == pytest.approx(0.001 * np.sqrt(length / 1000.0), rel=1e-12) and one.kind == "loop"


@pytest.mark.parametrize("most", [0, 40_000])
def test_number_and_sums_of_loops(monkeypatch, most):
    """Lines less points plus parts loops, whichever way they are found; true heights close to nothing, and one wrong
    line shows in its own loops alone and with its own size."""
    monkeypatch.setattr(loops, "MOST_CANDIDATES", most)
    rng = np.random.default_rng(5)
    height = {f"{i}.{j}": rng.uniform(0.0, 9.0) for i in range(5) for j in range(4)}
    rows = [
        (a, b, height[b] - height[a], rng.uniform(100.0, 900.0))
        for a in height
        for b in height
        if sum(abs(int(p) - int(q)) for p, q in zip(a.split("."), b.split("."))) == 1 and a < b
    ]
    rows += [("x", "y", 1.0, 100.0), ("y", "z", 1.0, 100.0), ("z", "x", -2.0, 100.0)]
    exact = loop_misclosures(net_of(rows), {})
    assert len(exact) == len(rows) - len(height) - 3 + 2
    assert max(abs(one.value) for one in exact) < 1e-12
    rows[6] = (*rows[6][:2], rows[6][2] + 0.05, rows[6][3])
    for one in loop_misclosures(net_of(rows), {}):
        through = [line for line, _ in one.lines].count(6)
        assert abs(one.value) == pytest.approx(0.05 * through, abs=1e-12)
        assert one.path[0] == one.path[-1]
    if most:
        assert sum(len(one.lines) for one in exact) < 5 * len(exact)  # blocks, not ways around the town


def test_chains_are_one_way_and_rings_close():
    """A ring of unnamed turning points without any junction, and a chain with a loose end."""
    ring = net_of(
        [
            ("a", "b", 1.0, 100.0),
            ("b", "c", 1.0, 200.0),
            ("c", "d", 1.0, 300.0),
            ("d", "a", -2.99, 400.0),
            ("d", "e", 7.0, 100.0),
        ]
    )
    (one,) = loop_misclosures(ring, {})
    assert (
        abs(one.value) == pytest.approx(0.01, abs=1e-12) and one.length == pytest.approx(1000.0) and len(one.lines) == 4
    )


def test_sections():
    net = net_of([("A", "B", 1.0, 1000.0), ("B", "A", -1.003, 1400.0), ("A", "B", 0.999, 1200.0)])
    back, again = section_misclosures(net)
    assert back.value == pytest.approx(-0.003, abs=1e-12) and back.length == pytest.approx(1200.0)
    assert again.value == pytest.approx(0.001, abs=1e-12) and again.lines == ((0, 1), (2, -1))
    assert loop_misclosures(net, {}) == []


def test_ways_between_fixed_benchmarks():
    net = net_of([("A", "P", 1.0, 1000.0), ("P", "B", 1.0, 1000.0), ("P", "C", 0.5, 500.0)])
    found = loop_misclosures(net, {0: 10.0, 2: 12.004, 3: 11.501})
    assert {one.kind for one in found} == {"benchmarks"} and len(found) == 2
    assert sorted(round(abs(one.value), 9) for one in found) in ([0.001, 0.004], [0.001, 0.003], [0.003, 0.004])
    assert all(one.length in (1500.0, 2000.0) for one in found)


def test_lengths_that_are_not_known():
    net = level_net(list("ABC"), list("BCA"), [1.0, 1.0, -2.001], [1e3, np.nan, 1e3], [1e-3] * 3)
    (one,) = loop_misclosures(net, {})
    assert np.isnan(one.length) and abs(one.value) == pytest.approx(0.001, abs=1e-12)
