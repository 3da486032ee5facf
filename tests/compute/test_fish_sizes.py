"""What rows of Catch say of sizes: measured, weighed, steps of length and of the scale, the best."""

import pytest

from reporter.compute.fish.page import fish_page
from reporter.run.season import read_season
from tests.compute.fish_logs import CATCH, LMB, NO_TALLY, SMB, fish_row, of, read, tallied
from tests.conftest import Change, WriteLog


def test_measured_and_weighed_are_what_is_no_estimate(write_log: WriteLog) -> None:
    rows = [
        fish_row(1, LMB, 15, 2.0),
        fish_row(1, LMB, 16, 2.5, "measured"),
        fish_row(1, LMB, 20, 4.5, "estimated"),  # neither
        fish_row(2, LMB, 12, 3.0, None, 3),  # three measured, none weighed
        fish_row(2, LMB, None, 2.0),  # weighed alone
        fish_row(3, LMB),
    ]
    _, page = read(write_log, rows, Effort=NO_TALLY)
    found = of(page, LMB)
    assert [found[key] for key in ("fish", "measured", "weighed")] == [8, 5, 3]
    assert (found["longest_mm"], found["longest_estimated"]) == (20 * 25.4, True)
    assert found["heaviest_g"] == pytest.approx(4.5 * 453.59237)
    assert found["heaviest_estimated"]
    assert page.groups_weighed


def test_of_equals_the_measured_one_is_the_longest(write_log: WriteLog) -> None:
    rows = [fish_row(1, LMB, 18, None, "estimated"), fish_row(2, LMB, 18)]
    _, page = read(write_log, rows, Effort=NO_TALLY)
    assert not of(page, LMB)["longest_estimated"]


def test_fish_of_a_cancelled_trip_are_counted_and_not_sized(write_log: WriteLog) -> None:
    rows = [fish_row(1, LMB, 22, 5), fish_row(2, LMB, 15, 2)]
    trips = {"G1": "Status", "G2": "cancelled"}
    season, page = read(write_log, rows, [["Big fish from", 15]], Effort=NO_TALLY, Trips=trips)
    found = of(page, LMB)
    assert [found[key] for key in ("fish", "caught", "measured", "measured_fished")] == [2, 1, 2, 1]
    assert page.best.table["length_mm"].tolist() == [15 * 25.4]
    assert page.sizes["class_no"].tolist() == [-1, 3]
    assert page.big is not None
    assert page.big.whole["big"].tolist() == [1]
    assert season.identity["fish"].sum() == 2


def test_fish_of_a_trip_whose_log_is_not_finished_are_sized_and_in_no_rate(write_log: WriteLog) -> None:
    rows = [fish_row(1, LMB, 22), fish_row(2, LMB, 15)]
    trips = {"G1": "Status", "G2": "log not finished"}
    _, page = read(write_log, rows, [["Big fish from", 15]], Effort=NO_TALLY, Trips=trips)
    assert page.best.table["length_mm"].tolist() == [22 * 25.4, 15 * 25.4]
    assert page.big is not None
    assert page.big.whole[["trips", "big"]].to_numpy().tolist() == [[2, 1]]


def test_fish_lies_in_the_step_at_or_below_its_length(write_log: WriteLog) -> None:
    lengths = [12, 12.99, 13, "13 1/2", "1 ft 2 in", "38.1 cm", 14.0000001]
    rows = [fish_row(1 + n % 3, LMB, length) for n, length in enumerate(lengths * 3)]
    _, page = read(write_log, rows, Effort=NO_TALLY)
    found = dict(zip(page.frequency["bin"], page.frequency["fish"], strict=True))
    # 38.1 cm is 15 in exactly.
    assert found == {12: 6, 13: 6, 14: 6, 15: 3}


def test_steps_of_a_metric_log_are_two_centimetres_and_empty_ones_stand_between(write_log: WriteLog) -> None:
    head = [*CATCH[:4], "Length (cm)", "Weight (kg)", *CATCH[6:]]
    lengths = [29.9, 30, 31.9, 38] * 5
    rows = [fish_row(1 + n % 3, LMB, length) for n, length in enumerate(lengths)]
    sheets: dict[str, Change] = {
        "Catch": [head, *rows],
        "Season": [["Setting", "Value"], ["Units", "metric"]],
    }
    season = read_season(write_log({**sheets, "Effort": NO_TALLY})).season
    assert season is not None
    found = fish_page(season).frequency
    assert list(zip(found["bin"], found["fish"], strict=True)) == [
        (28, 5),
        (30, 10),
        (32, 0),
        (34, 0),
        (36, 0),
        (38, 5),
    ]


def test_three_species_measured_most_have_charts_from_20_on(write_log: WriteLog) -> None:
    counts = {LMB: 21, SMB: 30, "spotted bass": 22, "bluegill": 25, "walleye": 19}
    rows = [fish_row(1, name, 11, None, None, number) for name, number in counts.items()]
    _, page = read(write_log, rows, Effort=NO_TALLY)
    assert list(dict.fromkeys(page.frequency["name"])) == [SMB, "bluegill", "spotted bass"]


def test_best_are_by_length_then_weight_then_as_in_the_log(write_log: WriteLog) -> None:
    rows = [
        fish_row(1, LMB, 18),
        fish_row(1, LMB, 19, 3.0),
        fish_row(1, SMB, 19, 3.5),
        fish_row(2, LMB, 19),
        fish_row(2, SMB, 18),
        fish_row(3, "northern pike", 35),
        fish_row(3, LMB, 20, None, "estimated"),
        *(fish_row(3, LMB, 10 + n / 10) for n in range(8)),
    ]
    _, page = read(write_log, rows, [["Species counted", "black bass"]], Effort=NO_TALLY)
    assert page.best.table["row"].tolist() == [8, 4, 3, 5, 2, 6, 16, 15, 14, 13]
    assert page.best.table["water"].tolist()[:2] == ["Bell River", "Lake Arden"]


def test_fish_weighed_without_a_length_are_counted_with_the_heaviest(write_log: WriteLog) -> None:
    rows = [
        fish_row(1, LMB, None, 2.0),
        fish_row(1, SMB, None, 3.25),
        fish_row(2, LMB, 15, 5.0),
        fish_row(2, LMB, None, 9.0, None, 4),  # could be the weight of four
    ]
    _, page = read(write_log, rows, Effort=NO_TALLY)
    best = page.best
    assert (best.no_length, best.heaviest) == (2, "SMB")
    assert best.heaviest_g == pytest.approx(3.25 * 453.59237)


@pytest.mark.parametrize(
    ("weights", "step"),
    [
        ([2, 3], 1),
        ([2, 2.5], 0.5),
        ([2.25, 3], 0.25),
        ([2.3, 3.1], 0.1),
        (["2 lb 3 oz", "1 lb 15 oz"], 1 / 16),
        ([2.05, 3.1], 0.05),
        ([2.37, 1.1], 0.01),
        ([2.005, 3], None),
        (["2-8", "1-4"], 0.25),
        ([], None),
    ],
)
def test_step_of_the_scale_is_the_coarsest_that_fits(
    weights: list[object], step: float | None, write_log: WriteLog
) -> None:
    rows = [fish_row(1, LMB, 17, weight) for weight in weights]
    rows.append(fish_row(1, LMB, 17, 2.123, "estimated"))
    _, page = read(write_log, rows, Effort=NO_TALLY)
    assert page.step == step


def test_fish_by_species_and_tallied_ones_are_all_fish(write_log: WriteLog) -> None:
    rows = [fish_row(1, LMB, 15), fish_row(1, "bluegill", 6, None, None, 4), fish_row(3, "none")]
    season, page = read(write_log, rows, [["Species counted", "black bass"]], Effort=tallied(2))
    assert page.species["name"].tolist() == ["bluegill", LMB]
    assert page.species["fish"].sum() + season.surplus == season.identity["fish"].sum() == 4 + 22


def test_log_without_rows_of_catch_has_nothing_to_size(write_log: WriteLog) -> None:
    season, page = read(write_log, [], [["Big fish from", 18]], Effort=tallied(2))
    for table in (page.species, page.best.table, page.structure, page.classes, page.weights, page.frequency):
        assert table.empty
    assert season.surplus == 22
