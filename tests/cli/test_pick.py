"""`reporter pick`: how a question may be typed, what is printed, and how it ends."""

import csv
import io
from pathlib import Path

import pytest

from tests.cli.conftest import Ran, Run
from tests.conftest import Change, WriteLog, clean_sheets
from tests.run.test_weather_by_hand import front_hours, write_hours

EFFORT = ["Trip", "Technique", "Minutes", "Anglers on it", "Landed", "Cover"]
CATCH = ["Trip", "Technique", "Species"]
HEADINGS = ["technique", "trips", "rod_hours", "fish", "fish_per_rod_hour", "shrunken_rate", "record"]

CHOICES = {
    "--time-of-year": "Time of year",
    "--water-temp": "Water temperature",
    "--day-type": "Type of day",
    "--clarity": "Clarity",
    "--water": "Water",
    "--sky": "Sky",
    "--wind": "Wind",
}
"""Option -> its line in what is printed."""

TECHNIQUES = ("Drop shot", "Jerkbait", "Topwater")


def season_of(units: str = "us") -> dict[str, Change]:
    """Six trips of 24 rod-hours: three on 18 April by Lake Arden, three in July on Bell River.

    Of each trip two hours by two anglers go to every technique; Drop shot lands 4, Jerkbait 1, Topwater none
    in April, and 1, 2 and 6 in July.
    """
    degrees, speed = ("°F", "mph") if units == "us" else ("°C", "km/h")
    heads = ["Trip", "Date", "Water", "Start", "End", "Anglers"]
    heads += [f"Water temp ({degrees})", "Clarity", "Sky", f"Wind speed ({speed})"]
    seen = {"us": ((52, 12), (74, 3)), "metric": ((11, 20), (24, 5))}[units]
    trips, effort = [], []
    for number in range(6):
        spring = number < 3
        temp, wind = seen[not spring]
        trips.append(
            [
                *(f"T-{number}", "2026-04-18" if spring else "2026-07-04"),
                *("Lake Arden" if spring else "Bell River", "06:00", "12:00", 2, temp),
                *(("muddy", "overcast") if spring else ("clear", "clear")),
                wind,
            ]
        )
        for name, fish in zip(TECHNIQUES, (4, 1, 0) if spring else (1, 2, 6), strict=True):
            effort.append([f"T-{number}", name, 120, 2, fish, "dock" if spring else "grass"])
    season = [[row[0], units] if row[0] == "Units" else row for row in clean_sheets()["Season"]]
    techniques = [["Technique", "Style"], *([name, "slow"] for name in TECHNIQUES)]
    return {
        "Season": season,
        "Trips": [heads, *trips],
        "Effort": [EFFORT, *effort],
        "Catch": [CATCH],
        "Techniques": techniques,
    }


@pytest.fixture(scope="module")
def log(write_log: WriteLog) -> Path:
    return write_log(season_of())


@pytest.fixture(scope="module")
def metric_log(write_log: WriteLog) -> Path:
    return write_log(season_of("metric"))


def said(ran: Ran, option: str) -> str:
    """What is printed beside a choice."""
    assert (ran.code, ran.err) == (0, "")
    label = f"  {CHOICES[option]:<18}"
    (line,) = [line for line in ran.out.splitlines() if line.startswith(label)]
    return line.removeprefix(label)


def listed(ran: Ran) -> list[list[str]]:
    """The rows of the list as printed, split where two spaces stand."""
    lines = ran.out.splitlines()
    top = next(place for place, line in enumerate(lines) if line.startswith("  What worked"))
    rows = []
    for line in lines[top + 1 :]:
        if not line.strip():
            return rows
        rows.append([part for part in line.split("  ") if part.strip()])
    return rows


def csv_rows(ran: Ran) -> list[dict[str, str]]:
    assert (ran.code, ran.err) == (0, "")
    return list(csv.DictReader(io.StringIO(ran.out)))


def test_help_names_every_choice_and_says_that_it_forecasts_nothing(run: Run) -> None:
    ran = run("pick", "--help")
    assert ran.code == 0
    assert all(option in ran.out for option in (*CHOICES, "--weather", "--csv"))
    assert "forecasts nothing" in " ".join(ran.out.split())


def test_without_a_choice_the_whole_record_answers(log: Path, run: Run) -> None:
    ran = run("pick", log)
    assert all(said(ran, option) == "Any" for option in CHOICES)
    assert "72.0 of 72.0 rod-hours fit." in ran.out
    # Fish of six trips in 24 rod-hours each: 15, 9 and 18.
    by_name = {row[0].strip(): [cell.strip() for cell in row[1:]] for row in listed(ran)}
    assert {name: cells[:4] for name, cells in by_name.items()} == {
        "Drop shot": ["6", "24.0", "15", "0.62"],
        "Jerkbait": ["6", "24.0", "9", "0.38"],
        "Topwater": ["6", "24.0", "18", "0.75"],
    }
    assert {cells[-1] for cells in by_name.values()} == {"some"}


@pytest.mark.parametrize(
    ("option", "typed", "expected"),
    [
        ("--time-of-year", "march", "March and April"),
        ("--time-of-year", "Apr", "March and April"),
        ("--time-of-year", "March and April", "March and April"),
        ("--time-of-year", "may", "May and June"),
        ("--water-temp", "52F", "50 to 60 °F"),
        ("--water-temp", "52 °F", "50 to 60 °F"),
        ("--water-temp", "11C", "50 to 60 °F"),  # 51.8 °F
        ("--water-temp", "52", "50 to 60 °F"),
        ("--water-temp", "60", "60 to 70 °F"),
        ("--water-temp", "50 to 60 °F", "50 to 60 °F"),
        ("--water-temp", "50 to 60", "50 to 60 °F"),
        ("--clarity", "murky", "muddy"),
        ("--clarity", "MUDDY", "muddy"),
        ("--clarity", "stained", "stained"),
        ("--day-type", "day_1", "day 1 behind a front"),
        ("--day-type", "day 1 behind a front", "day 1 behind a front"),
        ("--day-type", "ordinary", "ordinary"),
        ("--water", "arden", "Lake Arden"),
        ("--water", "bell river", "Bell River"),
        ("--sky", "sunny", "clear"),
        ("--sky", "overcast", "overcast"),
        ("--wind", "12mph", "10 to 15 mph"),
        ("--wind", "20km/h", "10 to 15 mph"),  # 12.4 mph
        ("--wind", "4", "under 5 mph"),
    ],
)
def test_choice_may_be_typed_in_many_ways(
    option: str, typed: str, expected: str, log: Path, run: Run
) -> None:
    label, _, became = said(run("pick", log, option, typed), option).partition(" (")
    assert label == expected
    assert became in ("kept)", "bands beside it too)", "let go)")


@pytest.mark.parametrize(
    ("option", "typed", "expected"),
    [
        ("--water-temp", "11", "10 to 16 °C"),
        ("--water-temp", "52F", "10 to 16 °C"),  # 11.1 °C
        ("--wind", "20", "16 to 24 km/h"),
        ("--wind", "12 mph", "16 to 24 km/h"),  # 19.3 km/h
    ],
)
def test_bare_number_is_in_the_units_of_the_log(
    option: str, typed: str, expected: str, metric_log: Path, run: Run
) -> None:
    assert said(run("pick", metric_log, option, typed), option) == f"{expected} (kept)"


@pytest.mark.parametrize("option", CHOICES)
@pytest.mark.parametrize("typed", ["", "any", "Any"])
def test_any_and_nothing_mean_any(option: str, typed: str, log: Path, run: Run) -> None:
    assert said(run("pick", log, option, typed), option) == "Any"


@pytest.mark.parametrize(
    ("option", "typed", "offered"),
    [
        ("--time-of-year", "spring", "January and February"),
        ("--time-of-year", "ma", "March and April"),
        ("--water-temp", "warm", "50 to 60 °F"),
        ("--water-temp", "52K", "50 to 60 °F"),
        ("--day-type", "front", "ahead of a front"),
        ("--day-type", "not_known", "day 3"),
        ("--clarity", "grey", "lightly stained"),
        ("--water", "Otter Mere", "Lake Arden"),
        ("--sky", "bright-ish", "partly cloudy"),
        ("--wind", "breezy", "15 mph and over"),
    ],
)
def test_word_that_is_not_known_exits_2_and_says_what_can_be_given(
    option: str, typed: str, offered: str, log: Path, run: Run
) -> None:
    ran = run("pick", log, option, typed)
    assert (ran.code, ran.out) == (2, "")
    assert f"'{option}'" in ran.err
    assert f"'{typed}' is none of them" in ran.err
    assert "It can be Any, " in ran.err
    assert offered in ran.err


@pytest.mark.parametrize(
    ("option", "typed", "why"),
    [
        # 60 m/s is 134.2 mph or 216 km/h; water stays within -10 and 45 °C, which is 14 and 113 °F.
        ("--wind", "300mph", "is more than any wind speed can be (134.2 mph)"),
        ("--wind", "300 km/h", "is more than any wind speed can be (134.2 mph)"),
        ("--wind", "-3", "is less than any wind speed can be (0 mph)"),
        ("--water-temp", "300F", "is more than any water temp can be (113 °F)"),
        ("--water-temp", "10F", "is less than any water temp can be (14 °F)"),
    ],
)
def test_measure_that_cannot_be_is_named_as_it_was_typed(
    option: str, typed: str, why: str, log: Path, run: Run
) -> None:
    ran = run("pick", log, option, typed)
    assert (ran.code, ran.out) == (2, "")
    assert f"Invalid value for '{option}': '{typed}' {why}." in ran.err


def test_word_nearly_right_is_offered_and_not_taken(log: Path, run: Run) -> None:
    ran = run("pick", log, "--water", "Lake Ardne")
    assert (ran.code, ran.out) == (2, "")
    assert "The closest is 'Lake Arden'." in ran.err


def test_water_of_two_names_alike_is_not_guessed(write_log: WriteLog, run: Run) -> None:
    waters = [["Water", "Also called"], ["Lake Arden", None], ["Lake Bell", None], ["Bell River", None]]
    ran = run("pick", write_log({"Waters": waters}), "--water", "bell")
    assert (ran.code, ran.out) == (2, "")
    assert "Lake Bell, Bell River" in ran.err


def test_name_typed_in_full_is_that_water_and_not_a_longer_one(write_log: WriteLog, run: Run) -> None:
    waters = [["Water", "Region"], ["Elm", "US-MI"], ["Elm (N)", "US-MI"]]
    path = write_log({"Waters": waters, "Trips": {"C2": "Elm", "C3": "Elm", "C4": "Elm (N)"}})
    for name in ("Elm", "Elm (N)"):
        assert said(run("pick", path, "--water", name), "--water").startswith(f"{name} (")


def test_name_of_signs_alone_is_taken_as_a_name_and_never_as_any(write_log: WriteLog, run: Run) -> None:
    trips = clean_sheets()["Trips"]
    path = write_log({"Trips": [*trips[:3], [*trips[3][:2], "***", *trips[3][3:]]]})
    ran = run("pick", path, "--water", "***")
    assert said(ran, "--water").startswith("*** (")


def test_choices_narrow_the_record_down(log: Path, run: Run) -> None:
    ran = run("pick", log, "--time-of-year", "april", "--clarity", "muddy", "--sky", "overcast")
    assert said(ran, "--clarity") == "muddy (kept)"
    assert "36.0 of 72.0 rod-hours fit." in ran.out
    # Three trips of 4 rod-hours each: 12, 3 and 0 fish in 12 rod-hours.
    names = [row[0].strip() for row in listed(ran)]
    assert names == ["Drop shot", "Jerkbait", "Topwater"]
    assert [[cell.strip() for cell in row[1:5]] for row in listed(ran)] == [
        ["3", "12.0", "12", "1.00"],
        ["3", "12.0", "3", "0.25"],
        ["3", "12.0", "0", "0.00"],
    ]
    assert [row[-1].strip() for row in listed(ran)] == ["thin"] * 3
    # 15 fish in 36 rod-hours.
    (cover,) = [line for line in ran.out.splitlines() if line.startswith("  Best cover")]
    assert cover.split("cover")[1].strip() == "dock (15 landed in 36.0 rod-hours, 0.42 per rod-hour)"
    (variant,) = [line for line in ran.out.splitlines() if line.startswith("  Best variant")]
    assert variant.endswith("not recorded")


def test_choice_that_fits_too_little_is_let_go_and_said_to_be(log: Path, run: Run) -> None:
    ran = run(
        "pick", log, "--time-of-year", "april", "--water-temp", "45F", "--clarity", "clear", "--wind", "12"
    )
    assert said(ran, "--time-of-year") == "March and April (kept)"
    assert said(ran, "--water-temp") == "under 50 °F (bands beside it too)"
    assert said(ran, "--clarity") == "clear (let go)"
    assert said(ran, "--wind") == "10 to 15 mph (let go)"
    assert said(ran, "--sky") == "Any"
    assert "36.0 of 72.0 rod-hours fit." in ran.out


@pytest.mark.parametrize("choice", [[], ["--time-of-year", "april"], ["--clarity", "clear", "--wind", "3"]])
def test_csv_holds_the_printed_list_with_every_digit(choice: list[str], log: Path, run: Run) -> None:
    printed = listed(run("pick", log, *choice))
    rows = csv_rows(run("pick", log, *choice, "--csv"))
    assert list(rows[0]) == HEADINGS
    assert len(rows) == len(printed) == 3
    for row, line in zip(rows, printed, strict=True):
        cells = [cell.strip() for cell in line]
        assert cells == [
            row["technique"],
            row["trips"],
            f"{float(row['rod_hours']):.1f}",
            f"{float(row['fish']):.0f}",
            f"{float(row['fish_per_rod_hour']):.2f}",
            f"{float(row['shrunken_rate']):.2f}",
            row["record"].partition(":")[0],
        ]
        assert float(row["fish_per_rod_hour"]) == pytest.approx(
            float(row["fish"]) / float(row["rod_hours"]), rel=1e-12
        )


def test_csv_is_all_that_is_printed(log: Path, run: Run) -> None:
    ran = run("pick", log, "--csv")
    assert ran.out.splitlines()[0] == ",".join(HEADINGS)
    assert len(ran.out.splitlines()) == 4


def test_two_techniques_stand_in_the_order_of_plain_rates_without_a_steadied_one(
    write_log: WriteLog, run: Run
) -> None:
    log = write_log()
    ran = run("pick", log)
    assert "Fewer than 3 techniques fit: in the order of their plain rates." in " ".join(ran.out.split())
    rows = csv_rows(run("pick", log, "--csv"))
    # The clean log: Drop shot 4 fish in 12 rod-hours, Jerkbait 2 in 12.
    assert [row["technique"] for row in rows] == ["Drop shot", "Jerkbait"]
    assert [row["shrunken_rate"] for row in rows] == ["", ""]
    assert [row["fish"] for row in rows] == ["4", "2"]


def test_log_under_twenty_rod_hours_says_that_it_is_too_little(write_log: WriteLog, run: Run) -> None:
    effort = [EFFORT, ["T-001", "Jerkbait", 120, 2, 3, None]]
    ran = run("pick", write_log({"Effort": effort, "Catch": [CATCH]}), "--sky", "clear")
    assert "Your whole record is under 20 rod-hours: too little to choose by." in " ".join(ran.out.split())
    assert said(ran, "--sky") == "clear (let go)"


def test_record_of_just_twenty_rod_hours_is_enough_and_not_said_to_be_under_it(
    write_log: WriteLog, run: Run
) -> None:
    # Fifteen stints of 80 minutes are 20 hours; added up one by one in binary they come out just below.
    effort = [EFFORT, *([f"T-00{1 + place % 3}", "Jerkbait", 80, 1, 1, None] for place in range(15))]
    log = write_log({"Effort": effort, "Catch": [CATCH]})
    ran = run("pick", log, "--time-of-year", "january")
    assert "20.0 of 20.0 rod-hours fit." in ran.out
    assert "under 20 rod-hours" not in " ".join(ran.out.split())


@pytest.mark.parametrize("choice", [[], ["--sky", "clear"], ["--water", "arden"]])
def test_log_without_effort_says_so(choice: list[str], write_log: WriteLog, run: Run) -> None:
    ran = run("pick", write_log({"Effort": [EFFORT]}), *choice)
    assert (ran.code, ran.err) == (0, "")
    assert "Nothing to choose from yet: no stint has usable effort." in " ".join(ran.out.split())


def test_csv_of_a_log_without_effort_is_its_headings(write_log: WriteLog, run: Run) -> None:
    ran = run("pick", write_log({"Effort": [EFFORT]}), "--csv")
    assert (ran.code, ran.out) == (0, ",".join(HEADINGS) + "\n")


def test_unknown_word_exits_2_for_a_log_without_effort_too(write_log: WriteLog, run: Run) -> None:
    ran = run("pick", write_log({"Effort": [EFFORT]}), "--sky", "purple")
    assert (ran.code, ran.out) == (2, "")
    assert "'purple' is none of them" in ran.err


@pytest.mark.parametrize("choice", [[], ["--sky", "purple"], ["--csv"]])
def test_log_with_a_stop_says_what_to_mend_and_exits_1(
    choice: list[str], write_log: WriteLog, run: Run
) -> None:
    ran = run("pick", write_log({"Catch": None}), *choice)
    assert (ran.code, ran.out) == (1, "")
    assert "No answer from log.xlsx: 1 problem to mend first." in ran.err
    assert "There is no sheet 'Catch'" in ran.err
    assert "Traceback" not in ran.err


@pytest.mark.parametrize("kind", ["missing", "no workbook"])
def test_file_that_cannot_be_read_exits_1_with_a_sentence(kind: str, tmp_path: Path, run: Run) -> None:
    path = tmp_path / "log.xlsx"
    if kind == "no workbook":
        path.write_text("Trip,Date\nT-001,2026-04-18\n", encoding="utf-8")
    ran = run("pick", path)
    assert (ran.code, ran.out) == (1, "")
    assert ran.err.startswith("I cannot read log.xlsx: ")


@pytest.mark.parametrize(
    "arguments", [[], ["--wrong", "log.xlsx"], ["a.xlsx", "b.xlsx"], ["log.xlsx", "--sky"]]
)
def test_wrong_command_line_exits_2(arguments: list[str], run: Run) -> None:
    ran = run("pick", *arguments)
    assert (ran.code, ran.out) == (2, "")
    assert "Error: " in ran.err


def test_log_is_never_written_to(write_log: WriteLog, run: Run) -> None:
    path = write_log(season_of())
    before = path.read_bytes()
    run("pick", path, "--sky", "clear")
    assert path.read_bytes() == before
    assert [one.name for one in path.parent.iterdir()] == ["log.xlsx"]


def test_hourly_weather_tells_the_types_of_day(log: Path, tmp_path: Path, run: Run) -> None:
    # The made-up front passed on 17 April: the three trips of the 18th, 36 of 72 rod-hours, are day 1.
    weather = write_hours(tmp_path / "hours.csv", front_hours())
    without, with_it = (
        run("pick", log, "--day-type", "day_1", *more) for more in ([], ["--weather", weather])
    )
    assert said(without, "--day-type") == "day 1 behind a front (let go)"
    assert "72.0 of 72.0 rod-hours fit." in without.out
    assert said(with_it, "--day-type") == "day 1 behind a front (kept)"
    assert "36.0 of 72.0 rod-hours fit." in with_it.out


def test_weather_that_cannot_be_read_exits_1_with_a_sentence(log: Path, tmp_path: Path, run: Run) -> None:
    ran = run("pick", log, "--weather", tmp_path / "no.csv")
    assert (ran.code, ran.out) == (1, "")
    assert ran.err.startswith("I cannot read no.csv: ")
