"""Rates and fair ratios of 20 made-up seasons against other programs, run here and now.

Source: R with the packages survey (svyratio, svytotal, svycontrast) and epiR (epi.2by2). Where they are not
installed this is left out; `.ci/run` installs them where it can.
"""

import shutil
import subprocess
from pathlib import Path

import numpy as np
import pandas as pd
import pytest

from reporter.compute.pair import members_of, pair_of
from reporter.compute.paired import same_condition, same_trip
from reporter.compute.ratio import ratio_of_means
from reporter.compute.ratio_error import (
    between_trips_error,
    between_trips_of_strata_error,
    independent_fish_error,
)

SEASONS, TRIPS, KINDS = 20, 36, 3
SEED = 41
Z = 1.959963984540054
SCRIPT = Path(__file__).parent / "seasons.R"
SIDES = ["catch_this", "effort_this", "catch_against", "effort_against"]


@pytest.fixture(scope="module")
def trips() -> pd.DataFrame:
    """Seasons in which a third of the trips have only one of the two techniques."""
    rng = np.random.default_rng(SEED)
    shape = SEASONS * TRIPS
    day = rng.gamma(2.0, 0.5, shape)
    fished = rng.choice(["both", "both", "both", "both", "this", "against"], shape)
    table = pd.DataFrame(
        {"season": np.repeat(np.arange(SEASONS), TRIPS), "kind": np.tile(np.arange(TRIPS) % KINDS, SEASONS)}
    )
    for side, other in (("this", "against"), ("against", "this")):
        effort = np.where(fished == other, 0.0, rng.uniform(0.5, 6.0, shape).round(2))
        table[f"catch_{side}"] = rng.poisson(1.2 * day * effort)
        table[f"effort_{side}"] = effort
    return table


@pytest.fixture(scope="module")
def by_r(trips: pd.DataFrame, tmp_path_factory: pytest.TempPathFactory) -> pd.DataFrame:
    folder = tmp_path_factory.mktemp("r")
    program = shutil.which("Rscript")
    if program is None or not _has_packages(program):
        pytest.skip("R with survey and epiR is not installed")
    trips.to_csv(folder / "in.csv", index=False)
    subprocess.run(
        [program, str(SCRIPT), str(folder / "in.csv"), str(folder / "out.csv")], check=True, timeout=300
    )
    return pd.read_csv(folder / "out.csv")


def _has_packages(program: str) -> bool:
    asked = 'quit(status = !all(c("survey", "epiR") %in% rownames(installed.packages())))'
    return subprocess.run([program, "-e", asked], capture_output=True, check=False).returncode == 0


def _of(trips: pd.DataFrame, column: str) -> np.ndarray:
    return np.asarray(trips[column].to_numpy(dtype=float).reshape(SEASONS, TRIPS))


def test_rates_and_their_errors_are_those_of_survey(trips: pd.DataFrame, by_r: pd.DataFrame) -> None:
    found = ratio_of_means(_of(trips, "catch_this"), _of(trips, "effort_this"))
    assert found.rate == pytest.approx(by_r["rate"].to_numpy(), rel=1e-9)
    assert np.sqrt(found.variance) == pytest.approx(by_r["rate_error"].to_numpy(), rel=1e-9)


def test_ratios_within_trips_are_those_of_epir_and_survey(trips: pd.DataFrame, by_r: pd.DataFrame) -> None:
    four = [_of(trips, side) for side in SIDES]
    found = same_trip(four[0], four[1], four[2], four[3])
    pair = pair_of(four[0], four[1], four[2], four[3])
    alone = np.exp(Z * independent_fish_error(pair))
    assert found.ratio == pytest.approx(by_r["trip_ratio"].to_numpy(), rel=1e-9)
    assert found.ratio / alone == pytest.approx(by_r["trip_low"].to_numpy(), rel=1e-9)
    assert found.ratio * alone == pytest.approx(by_r["trip_high"].to_numpy(), rel=1e-9)
    assert between_trips_error(*pair.weighted, np.count_nonzero(pair.both, axis=-1)) == pytest.approx(
        by_r["trip_error"].to_numpy(), rel=1e-9
    )


def test_ratios_within_conditions_are_those_of_survey(trips: pd.DataFrame, by_r: pd.DataFrame) -> None:
    four = [_of(trips, side) for side in SIDES]
    kinds = _of(trips, "kind").astype(int)
    found = same_condition(four[0], four[1], four[2], four[3], kinds)
    error = between_trips_of_strata_error(pair_of(four[0], four[1], four[2], four[3]), members_of(kinds))
    assert found.ratio == pytest.approx(by_r["condition_ratio"].to_numpy(), rel=1e-9)
    assert error == pytest.approx(by_r["condition_error"].to_numpy(), rel=1e-6)
