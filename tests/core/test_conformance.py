"""Figures of the review report against published examples, general libraries and cases solved by hand."""

import statistics as standard

import numpy as np
import pytest

from tautline.algorithms.core import conformance
from tautline.algorithms.core.errors import InputError


def test_figures_against_the_standard_library():
    values = [0.0021, -0.0043, 0.0105, float("nan"), -0.0127, 0.0002]
    known = [value for value in values if value == value]
    found = conformance.figures(np.array(values))
    assert (found.number, found.greatest, found.greatest_at) == (5, -0.0127, 4)
    assert found.mean == pytest.approx(standard.fmean(known), abs=1e-15)
    assert found.sd == pytest.approx(standard.stdev(known), abs=1e-15)
    assert found.rms == pytest.approx(standard.fmean([value**2 for value in known]) ** 0.5, abs=1e-15)


def test_figures_of_one_and_of_none():
    one, none = conformance.figures([0.004]), conformance.figures([np.nan])
    assert one.number == 1 and one.rms == 0.004 and np.isnan(one.sd)
    assert none.number == 0 and np.isnan(none.rms) and none.greatest_at is None


def test_conformance_of_the_guide():
    """JCGM 106:2012, example in 7.3: a voltage of -5.47 V known to 0.05 V, greatest allowed -5.40 V: 0.92 (from
    memory).
    """
    far = 100.0  # the other limit out of sight
    assert conformance.conformance(far - 0.07, far, 0.05)[0] == pytest.approx(0.92, abs=0.005)


def test_conformance_against_scipy():
    norm = pytest.importorskip("scipy.stats").norm
    residuals, tolerance, sd = np.linspace(-0.03, 0.03, 61), 0.01, 0.003
    wanted = norm.cdf(tolerance, residuals, sd) - norm.cdf(-tolerance, residuals, sd)
    assert np.allclose(conformance.conformance(residuals, tolerance, sd), wanted, rtol=0, atol=1e-12)


def test_conformance_on_the_limit_is_even_and_without_knowledge_none():
    assert conformance.conformance(0.010, 0.010, 0.001)[0] == pytest.approx(0.5, abs=1e-12)
    assert np.all(np.isnan(conformance.conformance([np.nan, 0.0, 0.0], [0.01, np.nan, 0.01], [0.003, 0.003, np.nan])))


@pytest.mark.parametrize("tolerance, sd", [(0.01, 0.0), (0.01, -0.001), (-0.01, 0.001)])
def test_conformance_refuses(tolerance, sd):
    with pytest.raises(InputError):
        conformance.conformance(0.0, tolerance, sd)


@pytest.mark.parametrize("kind", ["normal", "uniform", "exponential"])
def test_normality_against_scipy(kind):
    stats = pytest.importorskip("scipy.stats")
    rng = np.random.default_rng(7)
    values = getattr(rng, kind)(size=200)
    z = np.sort((values - values.mean()) / values.std(ddof=1))
    i = np.arange(1, 201)
    plain = -200 - np.sum((2 * i - 1) / 200 * (stats.norm.logcdf(z) + stats.norm.logsf(z[::-1])))
    assert conformance.normality(values) == pytest.approx(plain * (1 + 0.75 / 200 + 2.25 / 200**2), abs=1e-9)
    assert (conformance.normality(values) > conformance.NORMAL_LIMIT) == (kind != "normal")


def test_normality_rejects_five_percent_of_normal_samples():
    """What the critical value says of itself: 0.752 is passed by 95 % of normal samples."""
    rng = np.random.default_rng(11)
    rejected = np.mean([conformance.normality(rng.normal(size=40)) > conformance.NORMAL_LIMIT for _ in range(2000)])
    assert 0.035 < rejected < 0.065


def test_normality_of_equal_values_and_of_too_few():
    assert conformance.normality(np.full(10, 0.002)) == float("inf")
    with pytest.raises(InputError):
        conformance.normality(np.arange(7.0))


def _normal_scores(number, sd):
    """A sample that is as normal as one can be: quantiles of the normal distribution."""
    return sd * np.array([standard.NormalDist().inv_cdf((k + 0.5) / number) for k in range(number)])


def test_accuracy_is_196_times_the_rms():
    """FGDC-STD-007.3-1998, appendix 3-A: factor 1.9600 (from memory)."""
    values = _normal_scores(41, 0.003)
    found = conformance.accuracy_95(values)
    assert found.holds and found.value == pytest.approx(1.96 * np.sqrt(np.mean(values**2)), abs=1e-12)


@pytest.mark.parametrize(
    "values, own, against",
    [
        (_normal_scores(19, 0.003), False, ("few",)),
        (_normal_scores(41, 0.003) + 0.0012, False, ("bias",)),
        (np.concatenate([_normal_scores(60, 0.001), [0.02, -0.02, 0.02, -0.02]]), False, ("not normal",)),
        (_normal_scores(41, 0.003), True, ("own heights",)),
        (_normal_scores(5, 0.003), True, ("few", "own heights")),
    ],
)
def test_conditions_of_the_accuracy(values, own, against):
    found = conformance.accuracy_95(values, own_heights=own)
    assert found.against == against and not found.holds


@pytest.mark.parametrize(
    "residuals, status, sd, doubtful, accepted, kind",
    [
        ([np.nan], ["no height"], 1, [], [], "nothing to judge"),
        ([5.0, 1.0], ["no tolerance"] * 2, 1, [], [], "no tolerance"),
        ([1.0, -2.0], ["within"] * 2, 1, [], [], "within"),
        ([1.0, -2.0], ["within"] * 2, None, [], [], "within"),
        ([1.0, 9.5], ["within"] * 2, 1, [], [], "within, not certain"),
        ([1.0, 15.0], ["within", "high"], 1, [], [], "not within"),
        ([1.0, 10.5], ["within", "high"], 1, [], [], "not within, not certain"),
        ([1.0, 10.5], ["within", "high"], None, [], [], "not within"),
        ([1.0, 90.0], ["within", "high"], 1, [1], [], "doubtful"),
        ([1.0, 15.0], ["within", "high"], 1, [], [1], "accepted"),
        ([15.0, 90.0], ["high", "high"], 1, [1], [], "not within"),
        ([15.0, 90.0], ["high", "high"], 1, [1], [0], "doubtful"),
    ],
)
def test_verdict(residuals, status, sd, doubtful, accepted, kind):
    """Tolerance 10; worked out by hand from terms of the method page."""
    marks = {
        name: np.isin(np.arange(len(residuals)), rows)
        for name, rows in (("doubtful", doubtful), ("accepted", accepted))
    }
    probability = conformance.conformance(residuals, 10.0, np.nan if sd is None else sd)
    found = conformance.verdict(residuals, status, probability, **marks)
    assert found.kind == kind and kind in conformance.CONFORMANCE_VERDICTS
    assert not np.any(found.out & (found.doubted | found.accepted))


def test_certainty_counts_each_station_once():
    residuals = np.array([0.0, 9.9, 10.1, 30.0, 50.0])
    status = ["within", "within", "high", "high", "high"]
    found = conformance.verdict(
        residuals,
        status,
        conformance.conformance(residuals, 10.0, 1.0),
        doubtful=np.arange(5) == 4,
        accepted=np.zeros(5, bool),
    )
    assert found.sure_in.tolist() == [True, False, False, False, False]
    assert found.unsure.tolist() == [False, True, True, False, False]
    assert found.sure_out.tolist() == [False, False, False, True, False], "a doubted height is no evidence"


@pytest.mark.parametrize(
    "size, wanted", [(3.0, 1), (0.9, 2), (0.1, 2), (0.05, 3), (10.0, 1), (1000.0, 1), (None, 1), (np.nan, 1), (0.0, 1)]
)
def test_decimals(size, wanted):
    assert conformance.decimals_for(size, least=1, most=3) == wanted


@pytest.mark.parametrize("sd", [1e-5, 1e-4, 1e-3, 0.003, 0.01, 0.1])
@pytest.mark.parametrize("first", [0.0, 0.002, 0.0099, 0.03])
@pytest.mark.parametrize("second", [0.0, -0.004, 0.011])
def test_chance_within_a_circle(sd, first, second):
    """Source: the noncentral chi-square distribution with two degrees of freedom, where both deviations are one."""
    stats = pytest.importorskip("scipy.stats")
    wanted = stats.ncx2.cdf((0.01 / sd) ** 2, 2, (first**2 + second**2) / sd**2)
    assert conformance.radial_conformance(first, second, 0.01, sd, sd)[0] == pytest.approx(wanted, abs=1e-12)


@pytest.mark.parametrize("turned", [False, True])
@pytest.mark.parametrize(
    "first, second, sd_first, sd_second",
    [
        (0.0029, 0.0059, 0.0089, 0.0001),
        (-0.0117, -0.0044, 0.024, 0.0002),
        (0.0095, -0.003, 0.0029, 0.00015),
        (0.004, 0.0, 0.003, 0.002),
        (0.05, 0.0, 0.001, 0.001),
    ],
)
def test_chance_within_a_circle_of_unlike_deviations(first, second, sd_first, sd_second, turned):
    """Against an adaptive quadrature of scipy over rows of the circle."""
    integrate, special = pytest.importorskip("scipy.integrate"), pytest.importorskip("scipy.special")
    limit = 0.01

    def density(y):
        half = np.sqrt(max(limit**2 - y * y, 0.0))
        across = special.ndtr((half - first) / sd_first) - special.ndtr((-half - first) / sd_first)
        return across * np.exp(-0.5 * ((y - second) / sd_second) ** 2) / (sd_second * np.sqrt(2.0 * np.pi))

    ends = np.clip(second + sd_second * np.array([-9.0, -3.0, 0.0, 3.0, 9.0]), -limit, limit)
    parts = [integrate.quad(density, a, b, epsabs=1e-13, limit=400)[0] for a, b in zip(ends, ends[1:]) if b > a]
    given = (second, first, limit, sd_second, sd_first) if turned else (first, second, limit, sd_first, sd_second)
    assert conformance.radial_conformance(*given)[0] == pytest.approx(sum(parts), abs=1e-9)


def test_chance_within_a_circle_of_many_and_of_unknown():
    known = conformance.radial_conformance([0.0, np.nan, 0.0], [0.0, 0.0, np.nan], 0.01, 0.003, [0.003, 0.003, 0.003])
    assert known[0] > 0.99 and np.isnan(known[1:]).all()
    assert np.isnan(conformance.radial_conformance(0.0, 0.0, 0.01, 0.003, np.nan)[0])
    assert conformance.radial_conformance(0.0, 0.0, 0.0, 0.003, 0.003)[0] == 0.0
    for bad in ((0.0, 0.0, 0.01, 0.0, 1.0), (0.0, 0.0, 0.01, 1.0, 0.0), (0.0, 0.0, -0.01, 1.0, 1.0)):
        with pytest.raises(InputError):
            conformance.radial_conformance(*bad)


@pytest.mark.parametrize("word", ["left", "right", "beyond"])
def test_verdict_on_a_line_and_on_both(word):
    none = np.zeros(3, bool)
    found = conformance.verdict(
        [0.001, 0.02, np.nan], ["within", word, ""], np.full(3, np.nan), doubtful=none, accepted=none
    )
    assert found.kind == "not within" and found.out.tolist() == [False, True, False]
    assert found.judged.tolist() == [True, True, False]
