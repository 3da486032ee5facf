"""Catch rates, their variance and their dispersion against figures made by other programs."""

from dataclasses import dataclass

import numpy as np
import pytest
import statsmodels.api as sm

from reporter.compute.ratio import Dispersion, RatioOfMeans, index_of_dispersion, ratio_of_means

# Eight invented trips, and the first 12 hauls of `fishing` (fish per haul; swept area in thousands of square
# metres), a deep-sea trawl survey by Bailey et al. 2008, Proc. R. Soc. B 275:1965-1969, as carried by the
# Python package pydataset 0.2.0.
CATCH = {
    "eight trips": [5, 0, 7, 4, 0, 9, 2, 5],
    "twelve hauls": [76, 161, 39, 410, 177, 695, 352, 674, 624, 736, 332, 529],
}
EFFORT = {
    "eight trips": [4, 4, 6, 6, 3.5, 6, 4, 7.5],
    "twelve hauls": [
        *(36.710, 45.74125390625, 39.775, 51.000, 29.831251953125, 31.880),
        *(38.300, 38.260, 44.600, 52.600, 29.831251953125, 39.900),
    ],
}
SVYRATIO = "computed with R 4.2.2 survey 4.1-1: svyratio(~c, ~e, svydesign(id=~trip, weights=~1))"
QUASIPOISSON = "computed with R 4.2.2: glm(c ~ offset(log(e)), family = quasipoisson)"


@dataclass(frozen=True)
class Published:
    data: str
    rate: float
    se: float
    df: int
    digits: float
    source: str


@pytest.mark.parametrize(
    "known",
    [
        Published("eight trips", 0.7804878, 0.1791280, 7, 1e-7, SVYRATIO),
        Published("twelve hauls", 10.04329259, 1.756403833, 11, 1e-9, SVYRATIO),
    ],
    ids=lambda known: known.data,
)
def test_rate_and_standard_error_are_those_of_survey_ratio_estimation(known: Published) -> None:
    ratio = ratio_of_means(CATCH[known.data], EFFORT[known.data])
    assert ratio.rate[0] == pytest.approx(known.rate, rel=known.digits), known.source
    assert np.sqrt(ratio.variance[0]) == pytest.approx(known.se, rel=4 * known.digits), known.source
    assert ratio.df[0] == known.df


def test_rate_is_not_the_mean_of_trip_rates() -> None:
    # 0.71875, the mean of the eight trips' own rates, by hand.
    assert _eight_trips().rate[0] != pytest.approx(0.71875, rel=0.05)


def test_standard_error_does_not_take_stints_as_independent() -> None:
    relative = np.sqrt(_eight_trips().variance[0]) / _eight_trips().rate[0]
    # statsmodels Poisson GLM, trips as clusters: 0.2295077; the ten stints as independent: 0.2085464.
    assert relative == pytest.approx(0.2295077, abs=1e-7)
    assert relative != pytest.approx(0.2085464, rel=0.05)


def test_rates_with_each_trip_left_out_give_the_jackknife_error_of_survey() -> None:
    each_left_out = np.where(np.eye(8) == 1, 0.0, EFFORT["eight trips"])
    rates = ratio_of_means(CATCH["eight trips"], each_left_out).rate
    # Computed with R 4.2.2 survey 4.1-1: jackknife standard error, 0.1788111.
    assert np.sqrt(7 / 8 * ((rates - rates.mean()) ** 2).sum()) == pytest.approx(0.1788111, abs=1e-7)


@pytest.mark.parametrize("seed", range(5))
def test_variance_is_that_of_a_clustered_poisson_regression(seed: int) -> None:
    rng = np.random.default_rng(seed)
    effort = rng.uniform(0.5, 8, 12)
    catch = rng.poisson(rng.gamma(2, 0.5, 12) * effort) + 1
    model = sm.GLM(catch, np.ones(12), family=sm.families.Poisson(), offset=np.log(effort))
    # Computed live with statsmodels: GLM Poisson, offset log effort, cov_type="cluster".
    fit = model.fit(cov_type="cluster", cov_kwds={"groups": np.arange(12)})
    ratio = ratio_of_means(catch, effort)
    assert ratio.rate[0] == pytest.approx(np.exp(fit.params[0]), rel=1e-8)
    assert np.sqrt(ratio.variance[0]) / ratio.rate[0] == pytest.approx(fit.bse[0], rel=1e-8)
    assert _dispersion(catch, effort).chi_square[0] == pytest.approx(fit.pearson_chi2, rel=1e-8)


def test_index_of_dispersion_is_that_of_a_quasipoisson_fit() -> None:
    found = _dispersion(CATCH["eight trips"], EFFORT["eight trips"])
    # QUASIPOISSON: Pearson chi-square 12.73698, dispersion 1.819568; p from pchisq, 0.07878.
    assert found.chi_square[0] == pytest.approx(12.73698, abs=5e-6), QUASIPOISSON
    assert found.phi[0] == pytest.approx(1.819568, abs=5e-7), QUASIPOISSON
    assert found.p[0] == pytest.approx(0.07878, abs=5e-6), QUASIPOISSON


def test_ratio_survives_stopping_at_the_first_fish_and_other_averages_do_not() -> None:
    # Stop at the first fish or after 2 h, at 0.8 fish an hour. In closed form: E(fish) = 1 - exp(-1.6) =
    # 0.798103, E(hours) = 0.997629, ratio 0.8; the mean of ratios is infinite; leaving out what ended within
    # half an hour gives (exp(-0.4) - exp(-1.6)) / (1.75 exp(-0.4) - 1.25 exp(-1.6)) = 0.508775.
    wait = np.random.default_rng(20).exponential(1 / 0.8, 1_000_000)
    hours, fish = np.minimum(wait, 2.0), (wait < 2.0).astype(float)
    assert fish.mean() == pytest.approx(0.798103, abs=0.002)
    assert hours.mean() == pytest.approx(0.997629, abs=0.002)
    assert ratio_of_means(fish, hours).rate[0] == pytest.approx(0.8, abs=0.004)
    assert (fish / hours).mean() > 3
    without_short = ratio_of_means(fish, np.where(hours < 0.5, 0.0, hours)).rate[0]
    assert without_short == pytest.approx(0.508775, abs=0.004)


def _eight_trips() -> RatioOfMeans:
    return ratio_of_means(CATCH["eight trips"], EFFORT["eight trips"])


def _dispersion(catch: object, effort: object) -> Dispersion:
    return index_of_dispersion(np.asarray(catch), np.asarray(effort))
