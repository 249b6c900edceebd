"""Many lines fitted together against a dense weighted least squares of each, and against each fitted by itself."""

import numpy as np
import pytest

from tautline.algorithms.core.axis import Axis, AxisLine
from tautline.algorithms.core.covariance import independent, levelled
from tautline.algorithms.core.errors import InputError
from tautline.algorithms.core.fit import Heights, fit_surface, line_frame, line_frames, linearised
from tautline.algorithms.core.many_lines import fit_lines

LENGTH = 1_500.0


def axes_of(wgs84, number):
    """Axes from the equator to near the pole, in many azimuths."""
    lat, lon = np.linspace(-80.0, 80.0, number), np.linspace(-170.0, 170.0, number)
    found = []
    for k in range(number):
        end = wgs84.forward(lat[k], lon[k], 37.0 * k, LENGTH)
        found.append(Axis(AxisLine(f"axis {k}", [lat[k], end[0]], [lon[k], end[1]], wgs84), 100.0))
    return found


def heights_on(axis, number, random, known=True, wrong=()):
    """Heights of a straight line in space with errors of some millimetres, ``wrong``: rows with 0.1 m more."""
    s = np.sort(random.uniform(0.0, LENGTH, number))
    lat, lon, _ = axis.place(s)
    sigma = random.uniform(0.001, 0.004, number)
    height = line_frame(axis, 0.0, LENGTH).plane(250.0, [2e-3]).heights(lat, lon, axis.line.ellipsoid)
    height = height + sigma * random.normal(size=number)
    height[list(wrong)] += 0.1
    return Heights(lat, lon, height, independent(sigma if known else np.ones(number)), known)


@pytest.fixture
def given(wgs84):
    random = np.random.default_rng(8)
    axes = axes_of(wgs84, 40)
    heights = [
        heights_on(axis, 3 + k, random, known=k % 3 != 0, wrong=[5] if k in (10, 11, 12) else ())
        for k, axis in enumerate(axes)
    ]
    return line_frames(axes, np.full(len(axes), 0.5 * LENGTH)), heights


@pytest.mark.parametrize("options", [{}, {"remove": True}, {"remove": True, "robust": True}])
def test_each_as_by_itself(given, options):
    frames, heights = given
    for found, frame, own in zip(fit_lines(frames, heights, **options), frames, heights):
        alone = fit_surface(frame, own, **options)
        assert found.height == pytest.approx(alone.height, abs=1e-8)
        assert found.slopes == pytest.approx(alone.slopes, abs=1e-11)
        assert found.rms == pytest.approx(alone.rms, abs=1e-8) and len(found.offsets) == 0
        assert found.search.kept.tolist() == alone.search.kept.tolist()
        for name in ("w", "redundancies", "detectable"):
            assert getattr(found.search, name) == pytest.approx(
                getattr(alone.search, name), rel=1e-5, abs=1e-5, nan_ok=True
            )
        for name in ("cofactors", "quadratic", "weighted_design", "test_variances", "critical", "condition"):
            values = (np.asarray(getattr(one.solution, name)) for one in (found, alone))
            assert next(values) == pytest.approx(next(values), rel=1e-4, abs=1e-12)


def test_the_normal_equations_hold(given):
    """A^T W v = 0 and (A^T W A)^-1, dense, with the exact model linearised where the fit ends."""
    frames, heights = given
    for found, frame, own in zip(fit_lines(frames, heights), frames, heights):
        design, computed = linearised(frame, own, np.array([found.height, *found.slopes]))
        weights = np.diag(1.0 / own.covariance.variance)
        size = np.sqrt(np.diag(design.T @ weights @ design))
        assert np.abs(design.T @ weights @ (own.height - computed) / size).max() < 2e-5
        dense = np.linalg.inv((design.T @ weights @ design) / np.outer(size, size)) / np.outer(size, size)
        assert found.solution.cofactors == pytest.approx(dense, rel=1e-6)


def test_a_suspect_is_searched_for_only_where_it_is_to_be_set_aside(given):
    frames, heights = given
    alone = []

    def fitted(number, *one, **options):
        alone.append(number)
        return fit_surface(*one, **options)

    fit_lines(frames, heights, fitted=fitted)
    assert alone == [0]  # three stations: one degree of freedom
    alone.clear()
    found = fit_lines(frames, heights, remove=True, fitted=fitted)
    assert set(alone) >= {0, 10, 11, 12} and len(alone) < 8
    assert [np.flatnonzero(~found[k].search.kept).tolist() for k in (10, 11, 12)] == [[5]] * 3


def test_what_shares_errors_or_is_in_doubt_is_fitted_by_itself(given, wgs84):
    frames, heights = given
    own = heights[20]
    shared = levelled(np.full(len(own), 0.001), np.zeros(len(own)), np.linspace(0.0, 900.0, len(own)), 0.001)
    heights[20] = Heights(own.lat, own.lon, own.height, shared)
    found = fit_lines(frames, heights, sections=[()] * len(frames))[20]
    assert found.height == pytest.approx(fit_surface(frames[20], heights[20]).height, abs=1e-8)
    assert found.search.fitted.covariance is shared
    # Two readings at one place determine no line, and one station even less: the same words as of one line.
    for rows in (np.zeros(6, int), np.array([0])):
        heights[7] = Heights(*(v[rows] for v in (own.lat, own.lon, own.height)), independent(np.full(len(rows), 0.002)))
        with pytest.raises(InputError) as alone:
            fit_surface(frames[20], heights[7])
        with pytest.raises(InputError) as together:
            fit_lines([frames[20]] * len(frames), [heights[7]] * len(frames))
        assert (together.value.text, together.value.values) == (alone.value.text, alone.value.values)
