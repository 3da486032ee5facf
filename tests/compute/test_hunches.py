"""Hunches of every kind on logs made by hand, worked out again from the typed rows in plain numbers."""

import math
from collections import defaultdict
from collections.abc import Callable, Hashable, Sequence

import pytest

from reporter.compute.hunches.verdict import Result
from reporter.compute.report import make_report
from reporter.run.season import read_season
from tests.compute.test_within_strata import Cell, Plain, worked_out
from tests.conftest import Change, WriteLog

Row = dict[str, object]
Rule = Callable[[Row], bool]
Number = Callable[[Row], float]

HUNCH = ["Hunch", "Compare", "This", "Against", "With technique", "When", "And", "Measure"]
JERK, SHOT, JIG = "Jerkbait", "Drop shot", "Casting jig"
STYLES = {JERK: "moving", SHOT: "slow", JIG: "slow"}


def hunch(
    compare: str,
    this: str,
    against: str = "",
    *,
    technique: str = "",
    when: str = "",
    and_too: str = "",
    measure: str = "",
) -> list[object]:
    cells = ("a hunch", compare, this, against, technique, when, and_too, measure)
    return [cell or None for cell in cells]


def trip(number: int, **cells: object) -> Row:
    """Six hours by two anglers on a day of May; cells by heading, with _ for a space."""
    day = {"Trip": f"T-{number}", "Date": f"2026-05-{number:02d}", "Water": "Lake Arden"}
    return {**day, "Start": "06:00", "End": "12:00", "Anglers": 2, **_headed(cells)}


def trips(count: int) -> list[Row]:
    return [trip(number) for number in range(1, count + 1)]


def stint(number: int, technique: str, minutes: int, landed: int | None, **cells: object) -> Row:
    """A stint of one rod on trip number."""
    row: Row = {"Trip": f"T-{number}", "Technique": technique, "Minutes": minutes, "Anglers on it": 1}
    return {**row, "Landed": landed, **_headed(cells)}


def _headed(cells: Row) -> Row:
    return {heading.replace("_", " "): cell for heading, cell in cells.items()}


def sheet(rows: Sequence[Row]) -> list[list[object]]:
    headings = list(dict.fromkeys(heading for row in rows for heading in row))
    return [list(headings), *([row.get(heading) for heading in headings] for row in rows)]


def tried(
    write_log: WriteLog,
    made: Sequence[Row],
    effort: Sequence[Row],
    hunches: Sequence[list[object]],
    catch: Sequence[Row] = (),
    settings: Row | None = None,
    **sheets: list[list[object]],
) -> tuple[Result, ...]:
    """What the log of these rows says of these hunches, every one of which can be read."""
    answers: Row = {"Units": "us", "Time zone": "America/Chicago", "Latitude": 36, "Longitude": -90}
    answers = {"First day": "2026-01-01", "Last day": "2026-12-31", **answers, **(settings or {})}
    changes: dict[str, Change] = {
        "Season": [["Setting", "Value"], *([name, value] for name, value in answers.items())],
        "Trips": sheet(made),
        "Effort": sheet(effort),
        "Catch": sheet(catch) if catch else [["Trip", "Technique", "Species"]],
        "Techniques": [["Technique", "Style"], *([name, style] for name, style in STYLES.items())],
        "Hunches": [HUNCH, *([f"hunch {n}", *row[1:]] for n, row in enumerate(hunches))],
        **sheets,
    }
    reading = read_season(write_log(changes))
    assert reading.season is not None
    assert not [found for found in reading.problems if found.effect != "note"]
    return make_report(reading.season).hunches


def one(found: tuple[Result, ...]) -> Result:
    (result,) = found
    return result


def hours(row: Row) -> float:
    return float(str(row["Minutes"])) / 60


def landed(row: Row) -> float:
    return float(str(row["Landed"]))


def cells(
    effort: Sequence[Row],
    this: Rule,
    against: Rule,
    stratum: Callable[[Row], Hashable],
    part: Number = landed,
    whole: Number = hours,
) -> list[Cell]:
    """Add up typed rows to cells, in plain Python."""
    sums: dict[tuple[Hashable, Hashable], list[float]] = defaultdict(lambda: [0.0] * 4)
    for row in effort:
        side = 0 if this(row) else 2 if against(row) else None
        if side is not None:
            four = sums[stratum(row), row["Trip"]]
            four[side] += part(row)
            four[side + 1] += whole(row)
    return [Cell(stratum, trip, *four) for (stratum, trip), four in sums.items()]


def assert_says(found: Result, plain: Plain, verdict: str, why: str = "") -> None:
    for name in ("ratio", "low", "high"):
        assert getattr(found, name) == pytest.approx(getattr(plain, name), rel=2e-6, nan_ok=True), name
    assert found.trips == plain.trips
    assert (found.verdict, found.why) == (verdict, why)
    if verdict != "cannot_tell":
        assert plain.low > 1 if verdict == "holds" else plain.high < 1
        assert math.isnan(found.rod_hours_to_settle)


def verdict_of(plain: Plain) -> tuple[str, str]:
    """What a range says where there is record enough."""
    if plain.low > 1 or plain.high < 1:
        return ("holds" if plain.low > 1 else "other_way"), ""
    return "cannot_tell", "range"


def of_trip(row: Row) -> Hashable:
    return row["Trip"]


def of_pair(row: Row) -> Hashable:
    return row["Trip"], row["Technique"]


def of_technique(row: Row) -> Hashable:
    return row["Technique"]


def has(heading: str, *values: object) -> Rule:
    return lambda row: row.get(heading) in values


DARK, LIGHT = has("Colour", "dark"), has("Colour", "light")

# Seven trips, dark about three times as good as light; natural is on neither side.
COLOURS = [
    stint(1, JERK, 60, 4, Colour="dark"),
    stint(1, JERK, 90, 2, Colour="light"),
    stint(2, JERK, 60, 3, Colour="dark"),
    stint(2, JERK, 60, 1, Colour="light"),
    stint(2, SHOT, 60, 5, Colour="dark"),
    stint(2, SHOT, 120, 3, Colour="light"),
    stint(3, SHOT, 90, 5, Colour="dark"),
    stint(3, SHOT, 60, 1, Colour="light"),
    stint(4, JERK, 60, 3, Colour="dark"),
    stint(4, JERK, 60, 1, Colour="light"),
    stint(4, JERK, 60, 9, Colour="natural"),
    stint(5, SHOT, 120, 7, Colour="dark"),
    stint(5, SHOT, 60, 1, Colour="light"),
    stint(6, JERK, 60, 4, Colour="dark"),
    stint(6, JERK, 60, 2, Colour="light"),
    stint(7, JERK, 60, 9, Colour="light"),
    stint(7, SHOT, 60, 0, Colour="dark"),
]


def test_colour_is_compared_on_the_same_trip_within_the_technique(write_log: WriteLog) -> None:
    found = one(tried(write_log, trips(7), COLOURS, [hunch("colour", "dark", "light")]))
    plain = worked_out(cells(COLOURS, DARK, LIGHT, of_pair))
    assert_says(found, plain, "holds")
    # Trip 7 had dark on one technique and light on the other: it says nothing.
    assert found.trips == 6
    assert (found.part_this, found.whole_this) == (31, 8.5)
    assert (found.part_against, found.whole_against) == (11, 8.5)
    assert found.evidence == "same_trip"


def test_hunch_the_wrong_way_round_goes_the_other_way(write_log: WriteLog) -> None:
    found = one(tried(write_log, trips(7), COLOURS, [hunch("colour", "light", "dark")]))
    assert_says(found, worked_out(cells(COLOURS, LIGHT, DARK, of_pair)), "other_way")


def test_blank_against_is_everything_else_that_is_recorded(write_log: WriteLog) -> None:
    effort = [*COLOURS, stint(3, SHOT, 60, 8)]
    found = one(tried(write_log, trips(7), effort, [hunch("colour", "dark")]))
    other = has("Colour", "light", "natural")
    plain = worked_out(cells(effort, DARK, other, of_pair))
    assert_says(found, plain, *verdict_of(plain))
    assert (found.part_against, found.whole_against) == (20, 9.5)


def test_several_values_of_a_side_stand_with_semicolons_between(write_log: WriteLog) -> None:
    rows = [hunch("colour", "dark", "light; natural"), hunch("colour", " Dark ;LIGHT; ", "natural")]
    both, other = tried(write_log, trips(7), COLOURS, rows)
    plain = worked_out(cells(COLOURS, DARK, has("Colour", "light", "natural"), of_pair))
    assert_says(both, plain, *verdict_of(plain))
    assert (other.part_this, other.whole_this, other.part_against) == (4, 2, 9)


def test_with_technique_leaves_the_others_out(write_log: WriteLog) -> None:
    rows = [hunch("colour", "dark", "light", technique=name) for name in (JERK, SHOT)]
    for name, found in zip((JERK, SHOT), tried(write_log, trips(7), COLOURS, rows), strict=True):
        own = [row for row in COLOURS if row["Technique"] == name]
        plain = worked_out(cells(own, DARK, LIGHT, of_pair))
        assert_says(found, plain, "cannot_tell", "few_trips")
        assert found.trips == {JERK: 4, SHOT: 3}[name]


def test_each_other_attribute_is_compared_in_the_same_way(write_log: WriteLog) -> None:
    plain = worked_out(cells(COLOURS, DARK, LIGHT, of_pair))
    for attribute in ("variant", "retrieve", "size", "cover"):
        effort = [{**row, attribute.capitalize(): row["Colour"], "Colour": None} for row in COLOURS]
        found = one(tried(write_log, trips(7), effort, [hunch(attribute, "dark", "light")]))
        assert_says(found, plain, "holds")


def test_depth_is_an_attribute_of_a_stint_with_spans(write_log: WriteLog) -> None:
    feet = {"dark": 4.9, "light": 5, "natural": 10}
    effort = [{**row, "Depth (ft)": feet[str(row["Colour"])]} for row in COLOURS]
    rows = [hunch("depth", "under 5 ft", "5 to 10 ft"), hunch("depth", "over 5 ft", "depth under 5 ft")]
    shallow, deep = tried(write_log, trips(7), effort, rows)
    assert_says(shallow, worked_out(cells(COLOURS, DARK, LIGHT, of_pair)), "holds")
    other = has("Colour", "light", "natural")
    plain = worked_out(cells(COLOURS, other, DARK, of_pair))
    assert_says(deep, plain, *verdict_of(plain))
    assert deep.evidence == "same_trip"


# Seven trips alike; drop shot has more than the two others on every one.
TECHNIQUES = [
    stint(number, name, minutes, fish)
    for number, (drop, jerk, jig) in enumerate(
        [(5, 1, 1), (4, 2, 0), (6, 1, 1), (5, 0, 2), (4, 1, 1), (6, 2, 1), (5, 1, 0)], start=1
    )
    for name, minutes, fish in ((SHOT, 60, drop), (JERK, 60, jerk), (JIG, 30 + 10 * number, jig))
]


def test_technique_is_held_against_all_others_on_the_same_trips(write_log: WriteLog) -> None:
    effort = [*TECHNIQUES, stint(8, SHOT, 60, 30)]
    found = one(tried(write_log, trips(8), effort, [hunch("technique", SHOT)]))
    plain = worked_out(cells(effort, has("Technique", SHOT), has("Technique", JERK, JIG), of_trip))
    assert_says(found, plain, "holds")
    assert (found.trips, found.part_this, found.part_against) == (7, 35, 14)


def test_style_is_compared_on_the_same_trips(write_log: WriteLog) -> None:
    found = one(tried(write_log, trips(7), TECHNIQUES, [hunch("style", "slow", "moving")]))
    plain = worked_out(cells(TECHNIQUES, has("Technique", SHOT, JIG), has("Technique", JERK), of_trip))
    assert_says(found, plain, *verdict_of(plain))
    assert found.evidence == "same_trip"


def test_techniques_that_trips_and_days_of_one_kind_see_differently_cannot_be_told(
    write_log: WriteLog,
) -> None:
    # On six trips with both 4 fish an hour against 1; on six more of the same kind the other caught 6 an
    # hour: 4 an hour against (6 + 36) / (6 + 6) = 3.5 by the day, less than a third of what the trips say.
    effort = [
        row
        for number in range(1, 7)
        for row in (stint(number, SHOT, 60, 4), stint(number, JERK, 60, 1), stint(number + 6, JERK, 60, 6))
    ]
    found = one(tried(write_log, trips(12), effort, [hunch("technique", SHOT, JERK)]))
    plain = worked_out(cells(effort, has("Technique", SHOT), has("Technique", JERK), of_trip))
    assert plain.low > 1
    assert_says(found, plain, "cannot_tell", "disagree")


def test_techniques_hardly_fished_on_days_of_one_kind_have_no_ratio(write_log: WriteLog) -> None:
    # Cold: 5 trips with both, 10 rod-hours. Warm: 6 trips with one of them, 12 rod-hours.
    made = [trip(number, **{"Water_temp_(°F)": 45 if number < 6 else 75}) for number in range(1, 12)]
    effort = [stint(n, name, 60, fish) for n in range(1, 6) for name, fish in ((SHOT, 4), (JERK, 1))]
    effort += [stint(number, JERK, 120, 2) for number in range(6, 12)]
    found = one(tried(write_log, made, effort, [hunch("technique", SHOT, JERK)]))
    assert (found.verdict, found.why, found.trips) == ("cannot_tell", "no_overlap", 5)
    assert math.isnan(found.ratio)
    assert math.isnan(found.rod_hours_to_settle)


# Wind of ten trips, five of them at 10 mph or over; both techniques on most.
SPEEDS = (12, 3, 10, 9.9, 15, 5, 11, 8, 20, 2)
WINDY = [
    stint(number, name, 60, fish)
    for number, (jerk, drop) in enumerate(
        [(6, 3), (2, 1), (5, 3), (2, 0), (7, None), (1, 1), (6, 2), (2, None), (5, 4), (1, 2)], start=1
    )
    for name, fish in ((JERK, jerk), (SHOT, drop))
    if fish is not None
]


def number_of(row: Row) -> int:
    return int(str(row["Trip"])[2:])


def test_wind_threshold_is_compared_within_techniques_over_days(write_log: WriteLog) -> None:
    made = [trip(number, **{"Wind_speed_(mph)": speed}) for number, speed in enumerate(SPEEDS, start=1)]
    rows = [
        hunch("wind", "over 10 mph", "under 10 mph"),
        hunch("wind", "wind over 10 mph"),
        hunch("wind", "10 mph and over", "10 mph or less"),
        hunch("wind", "above 4.4704 m/s", "below 10"),
    ]
    plain = worked_out(
        cells(
            WINDY,
            lambda row: SPEEDS[number_of(row) - 1] >= 10,
            lambda row: SPEEDS[number_of(row) - 1] < 10,
            of_technique,
        )
    )
    for found in tried(write_log, made, WINDY, rows):
        assert_says(found, plain, "holds")
        assert (found.evidence, found.trips) == ("over_days", 10)
        assert (found.whole_this, found.whole_against) == (9, 9)


def test_time_of_day_is_compared_within_techniques_with_trips_as_clusters(write_log: WriteLog) -> None:
    # At 36 N, 90 W in early May the sun rises at about 06:05: 07:15 is in the first two hours of light, 11:30
    # in the middle of the day.
    early, noon = {"Start": "06:45", "End": "07:45"}, {"Start": "11:00", "End": "12:00"}
    counts = [(3, 1, 1), (4, 1, 2), (2, 1, 1), (5, 2, 1), (3, 0, 1), (4, 1, 2)]
    effort = []
    for number, (first, later, drop) in enumerate(counts, start=1):
        effort += [stint(number, JERK, 60, first, **early), stint(number, JERK, 60, later, **noon)]
        effort += [stint(number, SHOT, 60, drop, **(early if number % 2 else noon))]
    typed = [{**row, "Minutes": None} for row in effort]
    rows = [
        hunch("time of day", "first two hours of light", "middle of the day"),
        hunch("time of day", "First Two Hours of the Trip", "later on the trip"),
        hunch("light", "first two hours of light"),
    ]
    plain = worked_out(cells(effort, has("Start", "06:45"), has("Start", "11:00"), of_technique))
    for found in tried(write_log, trips(6), typed, rows):
        assert_says(found, plain, "holds")
        assert (found.trips, found.evidence) == (6, "over_days")


def test_wind_direction_is_held_against_every_other_that_is_recorded(write_log: WriteLog) -> None:
    winds = ("E", "90", "100", "ENE", "W", "N", "calm", "S", "E", 112, "NW", None, "variable")
    # ENE is 67.5 and on the edge of E; 112 lies below 112.5.
    east = {1, 2, 3, 4, 9, 10}
    made = [trip(number, Wind_from=wind) for number, wind in enumerate(winds, start=1)]
    fish = (1, 0, 2, 1, 3, 2, 3, 2, 1, 1, 3, 20, 2)
    effort = [stint(number, JERK, 60, landed) for number, landed in enumerate(fish, start=1)]
    effort += [stint(number, SHOT, 30, 2) for number in (1, 5, 8)]
    rows = [hunch("wind from", "E"), hunch("wind from", "from E"), hunch("wind from", "wind from E")]
    plain = worked_out(
        cells(
            effort,
            lambda row: number_of(row) in east,
            lambda row: number_of(row) not in {*east, 12},
            of_technique,
        )
    )
    for found in tried(write_log, made, effort, rows):
        assert_says(found, plain, *verdict_of(plain))
        assert (found.trips, found.part_this) == (12, 8)


def test_falling_water_is_held_against_the_levels_that_are_named(write_log: WriteLog) -> None:
    levels = ("falling", "steady", "rising", "falling", "normal", "falling", "steady", "falling", "falling")
    levels += ("rising", "steady", "high")
    made = [trip(number, Water_level=level) for number, level in enumerate(levels, start=1)]
    fish = (1, 5, 4, 0, 9, 2, 6, 1, 1, 5, 4, 9)
    effort = [stint(number, SHOT, 60, landed) for number, landed in enumerate(fish, start=1)]
    rows = [
        hunch("level", "falling", "steady; rising"),
        hunch("level", "level falling", "steady;level rising"),
    ]
    plain = worked_out(
        cells(
            effort,
            lambda row: levels[number_of(row) - 1] == "falling",
            lambda row: levels[number_of(row) - 1] in ("steady", "rising"),
            of_technique,
        )
    )
    for found in tried(write_log, made, effort, rows):
        assert_says(found, plain, "other_way")
        assert (found.part_this, found.part_against, found.trips) == (5, 24, 10)


def test_hang_ups_are_counted_where_they_were_written_down(write_log: WriteLog) -> None:
    numbers = [(6, 1), (4, 1), (7, 2), (5, None), (6, 1), (5, 0), (8, 2)]
    effort = [
        stint(number, name, 60, None if number % 2 else 2, **{"Hang-ups": hung})
        for number, both in enumerate(numbers, start=1)
        for name, hung in zip((JIG, JERK), both, strict=True)
    ]
    found = one(tried(write_log, trips(7), effort, [hunch("technique", JIG, JERK, measure="hang-ups")]))
    told = [row for row in effort if row["Hang-ups"] is not None]
    plain = worked_out(
        cells(
            told,
            has("Technique", JIG),
            has("Technique", JERK),
            of_trip,
            part=lambda row: float(str(row["Hang-ups"])),
        )
    )
    assert_says(found, plain, "holds")
    assert (found.trips, found.part_this, found.part_against, found.left_out) == (6, 36, 7, 0)


CLIENTS: list[list[object]] = [
    ["Client", "Skill"],
    ["C1", "new"],
    ["C2", "handy"],
    ["C3", "some"],
    ["C4", None],
]


def test_skill_is_that_of_the_stints_angler_else_of_all_the_trips_clients(write_log: WriteLog) -> None:
    aboard = ("C1", "C2", "C1; C2", "C2", "C1", "C1", "C2", "C1", "C2", "C3", "C4", "C1; C2")
    made = [trip(number, Client=codes) for number, codes in enumerate(aboard, start=1)]
    effort = [stint(number, JERK, 60, fish) for number, fish in zip((1, 5, 6, 8), (1, 2, 0, 1), strict=True)]
    effort += [stint(number, JERK, 60, fish) for number, fish in zip((2, 4, 7, 9), (4, 5, 3, 4), strict=True)]
    effort += [stint(3, JERK, 60, 1, Angler="C1"), stint(3, JERK, 60, 5, Angler="C2")]
    effort += [stint(number, JERK, 60, 9) for number in (10, 11, 12)]
    found = one(tried(write_log, made, effort, [hunch("skill", "new", "handy")], Clients=CLIENTS))
    new, handy = {"C1"}, {"C2"}

    def by(row: Row) -> set[str]:
        named = row.get("Angler") or aboard[number_of(row) - 1]
        return set(str(named).split("; "))

    plain = worked_out(cells(effort, lambda row: by(row) == new, lambda row: by(row) == handy, of_technique))
    assert_says(found, plain, "other_way")
    assert (found.part_this, found.part_against, found.trips) == (5, 21, 9)


def test_two_conditions_must_both_be_met(write_log: WriteLog) -> None:
    # Of 10 trips 6 are stained and windy; on the others light is far better.
    waters = [("stained", 12)] * 3 + [("stained", 5), ("clear", 12), ("muddy", 20), (None, 15)]
    waters += [("stained", 10), ("stained", 25), ("murky stained", 11)]
    waters[-1] = ("stain", 11)
    made = [
        trip(number, Clarity=clarity, **{"Wind_speed_(mph)": speed})
        for number, (clarity, speed) in enumerate(waters, start=1)
    ]
    right = {1, 2, 3, 8, 9, 10}
    fish = {1: (4, 1), 2: (5, 2), 3: (4, 1), 8: (6, 1), 9: (5, 1), 10: (4, 2)}
    effort = [
        stint(number, JERK, 60, landed, Colour=colour)
        for number in range(1, 11)
        for colour, landed in zip(("dark", "light"), fish.get(number, (0, 9)), strict=True)
    ]
    rows = [
        hunch("colour", "dark", "light", when="stained", and_too="wind over 10 mph"),
        hunch("colour", "dark", "light", when="Wind over 10mph", and_too="STAINED"),
        hunch("colour", "dark", "light", and_too="stained"),
    ]
    first, turned, alone = tried(write_log, made, effort, rows)
    plain = worked_out(cells([row for row in effort if number_of(row) in right], DARK, LIGHT, of_pair))
    for found in (first, turned):
        assert_says(found, plain, "holds")
        assert found.trips == 6
    assert alone.trips == 7


MEASURED_ON: list[Row] = [
    stint(
        number,
        JERK,
        minutes,
        fish,
        Colour=colour,
        Stint=colour,
        Missed=missed,
        Lures_lost=lost,
        **{"Hang-ups": hung},
    )
    for number, both in enumerate(
        [
            ((60, 4, 2, 5, 2), (90, 2, 4, 1, 0)),
            ((60, 3, 1, 4, 1), (60, 2, 2, 2, 1)),
            ((90, 5, 3, 6, 2), (60, 1, 5, 0, 0)),
            ((60, 3, 0, 3, 1), (60, 2, 3, 1, 1)),
            ((60, 4, 2, 4, 2), (60, 1, 2, 2, 2)),
            ((120, 5, 1, 5, 1), (60, 2, 3, 1, 1)),
        ],
        start=1,
    )
    for colour, (minutes, fish, missed, hung, lost) in zip(("dark", "light"), both, strict=True)
]
# Every fish is a row: dark ones of 17, 18, 19 in ..., light ones of 15 and 18; the first of a stint is kept.
FISH: list[Row] = [
    {
        "Trip": row["Trip"],
        "Technique": JERK,
        "Species": "largemouth bass",
        "Length (in)": (17 + place if row["Colour"] == "dark" else 15 + 3 * place) + number_of(row) % 2,
        "Fate": "kept" if place == 0 else "released",
        "Stint": row["Colour"],
    }
    for row in MEASURED_ON
    for place in range(int(landed(row)))
]


def fish_of(row: Row) -> list[Row]:
    return [fish for fish in FISH if (fish["Trip"], fish["Stint"]) == (row["Trip"], row["Colour"])]


def inches(fish: Row) -> float:
    return float(str(fish["Length (in)"]))


def typed(heading: str) -> Number:
    return lambda row: float(str(row[heading]))


PARTS: dict[str, tuple[Number, Number]] = {
    "": (landed, hours),
    "landed": (landed, hours),
    "big fish": (lambda row: float(sum(inches(fish) >= 18 for fish in fish_of(row))), hours),
    "kept": (lambda row: float(sum(fish["Fate"] == "kept" for fish in fish_of(row))), hours),
    "bites": (lambda row: landed(row) + typed("Missed")(row), hours),
    "hang-ups": (typed("Hang-ups"), hours),
    "lures lost": (typed("Lures lost"), hours),
    "share landed": (landed, lambda row: landed(row) + typed("Missed")(row)),
    "mean length": (
        lambda row: sum(25.4 * inches(fish) for fish in fish_of(row)),
        lambda row: float(len(fish_of(row))),
    ),
}


def test_every_measure_is_its_own_two_numbers(write_log: WriteLog) -> None:
    rows = [hunch("colour", "dark", "light", measure=measure) for measure in PARTS]
    results = tried(write_log, trips(6), MEASURED_ON, rows, FISH, {"Big fish from": 18})
    for (measure, (part, whole)), found in zip(PARTS.items(), results, strict=True):
        counted = measure != "mean length"
        plain = worked_out(cells(MEASURED_ON, DARK, LIGHT, of_pair, part, whole), counted=counted)
        sums = [
            sum(number(row) for row in MEASURED_ON if side(row))
            for number in (part, whole)
            for side in (DARK, LIGHT)
        ]
        why = "few_events" if min(sums[:2] if counted else sums[2:]) < 5 else "range" if plain.low < 1 else ""
        assert found.hunch.measure == (measure or "landed")
        assert_says(found, plain, "cannot_tell" if why else "holds", why)
        told = (found.part_this, found.part_against, found.whole_this, found.whole_against)
        assert told == pytest.approx(tuple(sums)), measure
    said = {found.hunch.measure: found.verdict for found in results}
    assert (said["landed"], said["hang-ups"], said["mean length"]) == ("holds", "holds", "holds")


def test_mean_length_of_two_techniques_is_compared_on_the_same_trips(write_log: WriteLog) -> None:
    names = {"dark": JERK, "light": SHOT}
    effort = [{**row, "Technique": names[str(row["Colour"])]} for row in MEASURED_ON]
    fish = [{**row, "Technique": names[str(row["Stint"])]} for row in FISH]
    found = one(tried(write_log, trips(6), effort, [hunch("technique", JERK, measure="mean length")], fish))
    part, whole = PARTS["mean length"]
    plain = worked_out(cells(MEASURED_ON, DARK, LIGHT, of_trip, part, whole), counted=False)
    assert_says(found, plain, "holds")


def with_measured(count: int, how: str) -> list[Row]:
    """The first so many fish with a length, the rest without one or with an estimated one."""
    rest: Row = {"Measured": "estimated"} if how == "estimated" else {"Length (in)": None}
    told: Row = {"Measured": "measured"}
    return [{**fish, **(told if place < count else rest)} for place, fish in enumerate(FISH)]


@pytest.mark.parametrize("how", ["blank", "estimated"])
def test_mean_length_needs_seven_of_ten_fish_measured(how: str, write_log: WriteLog) -> None:
    # 34 fish: 24 are 70.6 %, 23 are 67.6 %.
    assert len(FISH) == 34
    said = []
    for count in (24, 23):
        found = one(
            tried(
                write_log,
                trips(6),
                MEASURED_ON,
                [hunch("colour", "dark", "light", measure="mean length")],
                with_measured(count, how),
            )
        )
        said.append(found.why)
        assert math.isnan(found.ratio) == (found.why == "not_measured")
    assert said[0] != "not_measured"
    assert said[1] == "not_measured"


def test_fish_tallied_beyond_the_rows_are_not_measured_either(write_log: WriteLog) -> None:
    # 24 of 34 fish have rows, every one measured; 23 are too few.
    rows = [hunch("colour", "dark", "light", measure="mean length")]
    enough = one(tried(write_log, trips(6), MEASURED_ON, rows, FISH[:24]))
    too_few = one(tried(write_log, trips(6), MEASURED_ON, rows, FISH[:23]))
    assert (enough.why == "not_measured", too_few.why) == (False, "not_measured")


def test_mean_length_of_fish_none_of_which_was_measured_is_not_measured_and_no_more(
    write_log: WriteLog,
) -> None:
    found = one(
        tried(write_log, trips(7), COLOURS, [hunch("colour", "dark", "light", measure="mean length")])
    )
    assert (found.verdict, found.why) == ("cannot_tell", "not_measured")


def test_mean_length_is_told_all_the_same_where_season_says_all_are_measured(write_log: WriteLog) -> None:
    rows = [hunch("colour", "dark", "light", measure="mean length")]
    few = [{**fish, "Length (in)": None if place % 2 else inches(fish)} for place, fish in enumerate(FISH)]
    settings: Row = {"All fish measured": "yes"}
    without = one(tried(write_log, trips(6), MEASURED_ON, rows, few))
    found = one(tried(write_log, trips(6), MEASURED_ON, rows, few, settings))
    assert without.why == "not_measured"

    def kept(row: Row) -> list[float]:
        own = [fish for fish in few if (fish["Trip"], fish["Stint"]) == (row["Trip"], row["Colour"])]
        return [25.4 * inches(fish) for fish in own if fish["Length (in)"] is not None]

    plain = worked_out(
        cells(
            [row for row in MEASURED_ON if kept(row)],
            DARK,
            LIGHT,
            of_pair,
            lambda row: sum(kept(row)),
            lambda row: float(len(kept(row))),
        ),
        counted=False,
    )
    assert plain.trips >= 5
    assert_says(found, plain, *verdict_of(plain))


def simple(per_trip: Sequence[tuple[int, int]], **cells_of: object) -> list[Row]:
    """An hour of dark and one of light on each trip, by their fish."""
    return [
        stint(number, JERK, 60, fish, Colour=colour, **cells_of)
        for number, both in enumerate(per_trip, start=1)
        for colour, fish in zip(("dark", "light"), both, strict=True)
    ]


@pytest.mark.parametrize(
    ("per_trip", "verdict", "why"),
    [
        ([(6, 2)] * 4, "cannot_tell", "few_trips"),
        ([(6, 2)] * 5, "holds", ""),
        ([(9, 1)] * 4 + [(9, 0)], "cannot_tell", "few_events"),
        ([(9, 1)] * 5, "holds", ""),
        ([(1, 9)] * 4 + [(0, 9)], "cannot_tell", "few_events"),
        ([(3, 0)] * 6, "cannot_tell", "no_ratio"),
        ([(0, 3)] * 6, "cannot_tell", "no_ratio"),
        ([(0, 0)] * 6, "cannot_tell", "no_ratio"),
        ([(2, 1)] * 6, "cannot_tell", "range"),
    ],
)
def test_record_must_be_large_enough_and_clear(
    per_trip: list[tuple[int, int]], verdict: str, why: str, write_log: WriteLog
) -> None:
    effort = simple(per_trip)
    found = one(tried(write_log, trips(len(per_trip)), effort, [hunch("colour", "dark", "light")]))
    assert_says(found, worked_out(cells(effort, DARK, LIGHT, of_pair)), verdict, why)


@pytest.mark.parametrize(("against", "verdict", "why"), [(4, "cannot_tell", "few_trips"), (5, "holds", "")])
def test_day_quality_takes_five_trips_on_each_side(
    against: int, verdict: str, why: str, write_log: WriteLog
) -> None:
    count = 6 + against
    made = [trip(number, Sky="rain" if number <= 6 else "clear") for number in range(1, 1 + count)]
    effort = [stint(number, JERK, 60, 6 if number <= 6 else 2) for number in range(1, 1 + count)]
    found = one(tried(write_log, made, effort, [hunch("sky", "rain", "clear")]))
    plain = worked_out(
        cells(effort, lambda row: number_of(row) <= 6, lambda row: number_of(row) > 6, of_technique)
    )
    assert_says(found, plain, verdict, why)


@pytest.mark.parametrize("side", [("purple", "light"), ("dark", "purple"), ("purple", "")])
def test_side_that_was_never_fished_says_so(side: tuple[str, str], write_log: WriteLog) -> None:
    found = one(tried(write_log, trips(7), COLOURS, [hunch("colour", *side)]))
    assert (found.verdict, found.why, found.trips) == ("cannot_tell", "never_fished", 0)
    assert math.isnan(found.ratio)
    assert math.isnan(found.low)
    assert math.isnan(found.rod_hours_to_settle)


@pytest.mark.parametrize(("minutes", "told"), [(120, True), (121, False)])
def test_day_quality_takes_half_of_the_rod_hours_on_techniques_of_either_side(
    minutes: int, told: bool, write_log: WriteLog
) -> None:
    # Jerkbait on ten trips, half of them in rain, an hour each; drop shot in rain only, 5 x minutes in all.
    made = [trip(number, Sky="rain" if number <= 5 else "clear") for number in range(1, 11)]
    effort = [stint(number, JERK, 60, 6 if number <= 5 else 1) for number in range(1, 11)]
    effort += [stint(number, SHOT, minutes, 3) for number in range(1, 6)]
    found = one(tried(write_log, made, effort, [hunch("sky", "rain", "clear")]))
    assert (found.why == "no_overlap") != told
    assert math.isnan(found.ratio) != told
    if told:
        assert (found.ratio, found.part_this, found.whole_this) == (pytest.approx(6), 30, 5)


def unplaced(number: int, first: str, second: str) -> list[Row]:
    """Two hours of drop shot in two colours, of which the log does not say which caught what."""
    return [stint(number, SHOT, 60, None, Colour=colour) for colour in (first, second)]


BASS: Row = {"Technique": SHOT, "Species": "largemouth bass"}


def test_fish_of_unknown_stint_leave_out_their_technique_only_where_it_lies_on_both_sides(
    write_log: WriteLog,
) -> None:
    own = simple([(6, 2), (5, 1), (7, 2), (6, 1), (5, 2)])
    odd = [*unplaced(1, "dark", "light"), *unplaced(2, "dark", "dark")]
    odd += [stint(3, JIG, 60, 1, Colour="light"), *unplaced(3, "dark", "natural")]
    fish = [{**BASS, "Trip": f"T-{number}"} for number in (1, 1, 1, 2, 2, 3, 3)]
    rows = [hunch("colour", "dark", "light"), hunch("technique", SHOT, JERK)]
    found, whole = tried(write_log, trips(5), [*own, *odd], rows, fish)
    # Trip 1: on both sides; trip 3: on this side and on neither. Trip 2 is dark alone and has no light beside
    # it. So nothing of drop shot is left, and the jig of trip 3 had light only.
    plain = worked_out(cells(own, DARK, LIGHT, of_pair))
    assert_says(found, plain, "holds")
    assert found.left_out == 2
    # For a technique it does not matter which stint they came on.
    assert whole.left_out == 0
    assert (whole.trips, whole.part_this, whole.whole_this) == (3, 7, 6)


def test_fish_of_unknown_stint_count_where_all_stints_of_their_technique_lie_on_one_side(
    write_log: WriteLog,
) -> None:
    # Level of the trip: both stints of a trip lie in it, whatever their colours.
    made = [trip(number, Water_level="falling" if number <= 5 else "steady") for number in range(1, 11)]
    effort = [row for number in range(1, 11) for row in unplaced(number, "dark", "light")]
    fish = [
        {**BASS, "Trip": f"T-{number}"} for number in range(1, 11) for _ in range(1 if number <= 5 else 6)
    ]
    found = one(tried(write_log, made, effort, [hunch("level", "falling", "steady")], fish))
    counts = [{**row, "Landed": (0.5 if number_of(row) <= 5 else 3)} for row in effort]
    plain = worked_out(
        cells(counts, lambda row: number_of(row) <= 5, lambda row: number_of(row) > 5, of_technique)
    )
    assert_says(found, plain, "other_way")
    assert (found.left_out, found.part_this, found.part_against) == (0, 5, 30)


def test_hang_ups_are_never_left_out_as_every_stint_has_its_own(write_log: WriteLog) -> None:
    effort = [
        {**row, "Hang-ups": 4 if row["Colour"] == "dark" else 1}
        for number in range(1, 7)
        for row in unplaced(number, "dark", "light")
    ]
    fish = [{**BASS, "Trip": f"T-{number}"} for number in range(1, 7)]
    rows = [hunch("colour", "dark", "light", measure=measure) for measure in ("hang-ups", "landed")]
    hung, caught = tried(write_log, trips(6), effort, rows, fish)
    assert (hung.left_out, hung.ratio, hung.part_this) == (0, pytest.approx(4), 24)
    assert (caught.left_out, caught.why) == (6, "not_told")


@pytest.mark.parametrize("measure", ["bites", "share landed"])
def test_fish_of_unknown_stint_are_bites_whichever_of_its_stints_has_its_misses_written(
    measure: str, write_log: WriteLog
) -> None:
    # Two hours of drop shot a trip with 3 fish between them; misses are known of one hour only, the first or
    # the second. What the log says is the same either way, and so is the answer.
    said = []
    for misses in ((1, None), (None, 1)):
        effort = [stint(number, JERK, 60, 2, Missed=1) for number in range(1, 7)]
        effort += [
            stint(number, SHOT, 60, None, Missed=missed) for number in range(1, 7) for missed in misses
        ]
        fish = [{**BASS, "Trip": f"T-{number}"} for number in range(1, 7) for _ in range(3)]
        found = one(tried(write_log, trips(6), effort, [hunch("technique", SHOT, measure=measure)], fish))
        said.append((found.part_this, found.whole_this, found.ratio))
    assert said[0] == pytest.approx(said[1], nan_ok=True)


def test_rod_hours_to_settle_follow_from_the_range_and_the_rod_hours_compared(write_log: WriteLog) -> None:
    effort = [
        *simple([(2, 1), (1, 1), (2, 0), (1, 2), (2, 1), (3, 2)]),
        stint(6, SHOT, 600, 0, Colour="dark"),
    ]
    found = one(tried(write_log, trips(6), effort, [hunch("colour", "dark", "light")]))
    plain = worked_out(cells(effort, DARK, LIGHT, of_pair))
    assert_says(found, plain, "cannot_tell", "range")
    half = math.log(plain.high / plain.ratio)
    # 12 rod-hours of jerkbait are compared; the ten of drop shot are not.
    assert found.rod_hours_to_settle == pytest.approx(
        12 * ((half / math.log(plain.ratio)) ** 2 - 1), rel=1e-5
    )


def test_rod_hours_to_settle_a_share_are_rod_hours_too(write_log: WriteLog) -> None:
    # Without a bite there is no share, but such hours will come again.
    effort = [{**row, "Missed": 2} for row in simple([(2, 1), (1, 1), (2, 0), (1, 2), (2, 1), (3, 2)])]
    effort += [stint(number, JERK, 60, 0, Colour="dark", Missed=0) for number in range(1, 7)]
    found = one(
        tried(write_log, trips(6), effort, [hunch("colour", "dark", "light", measure="share landed")])
    )
    plain = worked_out(cells(effort, DARK, LIGHT, of_pair, landed, PARTS["share landed"][1]))
    assert_says(found, plain, "cannot_tell", "range")
    half = math.log(plain.high / plain.ratio)
    assert found.rod_hours_to_settle == pytest.approx(
        18 * ((half / math.log(plain.ratio)) ** 2 - 1), rel=1e-5
    )


def test_ratio_of_one_is_never_settled(write_log: WriteLog) -> None:
    found = one(tried(write_log, trips(6), simple([(2, 2)] * 6), [hunch("colour", "dark", "light")]))
    assert (found.ratio, found.why) == (1, "range")
    assert found.rod_hours_to_settle == math.inf


def test_every_day_quality_finds_its_two_sides(write_log: WriteLog) -> None:
    made = [
        trip(
            number,
            Sky="rain" if number <= 6 else "overcast",
            Clarity="muddy" if number <= 6 else "clear",
            **{
                "Water_temp_(°F)": 49.9 if number <= 6 else 50,
                "Date": f"2026-04-{number:02d}" if number <= 6 else f"2026-05-{number:02d}",
                "Water": "Lake Arden" if number <= 6 else "Bell River",
            },
        )
        for number in range(1, 13)
    ]
    effort = [stint(number, JERK, 60, (6 if number <= 6 else 2) + number % 2) for number in range(1, 13)]
    rows = [
        hunch("sky", "rain", "overcast"),
        hunch("clarity", "muddy"),
        hunch("water clarity", "Muddy", "clear water"),
        hunch("water temperature", "under 50 °F", "50 to 60 °F"),
        hunch("water temp", "water under 10 °C", "over 10 C"),
        hunch("month", "April", "May"),
        hunch("month", "in April"),
        hunch("water", "Lake Arden"),
        hunch("water", "at: lake arden", "bell river"),
    ]
    plain = worked_out(
        cells(effort, lambda row: number_of(row) <= 6, lambda row: number_of(row) > 6, of_technique)
    )
    for found in tried(write_log, made, effort, rows):
        assert_says(found, plain, "holds")


def test_every_phrase_of_when_narrows_both_sides(write_log: WriteLog) -> None:
    made = [
        trip(number, Sky="rain", Clarity="stained", Water_level="rising", Client="C1", Wind_from="SW")
        for number in range(1, 7)
    ]
    made += [trip(number, Sky="clear", Clarity="clear", Client="C2", Wind_from="N") for number in range(7, 9)]
    made = [{**row, "Wind speed (mph)": 12 if number_of(row) <= 6 else 3} for row in made]
    made = [{**row, "Water temp (°F)": 55 if number_of(row) <= 6 else 71} for row in made]
    made = [row | ({"Date": f"2026-06-{number_of(row):02d}"} if number_of(row) > 6 else {}) for row in made]
    made = [row | ({"Water": "Bell River"} if number_of(row) > 6 else {}) for row in made]
    effort = simple([(6, 2), (5, 1), (7, 2), (6, 1), (5, 2), (6, 3), (0, 9), (0, 9)])
    effort = [{**row, "Cover": "dock" if number_of(row) <= 6 else "rock", "Depth (ft)": 4} for row in effort]
    effort = [{**row, "Depth (ft)": 4 if number_of(row) <= 6 else 12} for row in effort]
    phrases = ("rain", "stained", "level rising", "clients new to it", "wind from SW", "wind over 10 mph")
    phrases += ("water 50 to 60 °F", "in May", "at: Lake Arden", "on docks", "depth under 5 ft", "on dock")
    rows = [hunch("colour", "dark", "light", when=phrase) for phrase in phrases]
    plain = worked_out(cells([row for row in effort if number_of(row) <= 6], DARK, LIGHT, of_pair))
    for phrase, found in zip(phrases, tried(write_log, made, effort, rows, Clients=CLIENTS), strict=True):
        assert found.trips == 6, phrase
        assert_says(found, plain, "holds")


def test_metric_log_has_its_own_phrases(write_log: WriteLog) -> None:
    headings = {"Wind_speed_(km/h)": (16, 15.9), "Water_temp_(°C)": (9.9, 10)}
    made = [
        trip(number, **{heading: pair[number > 6] for heading, pair in headings.items()})
        for number in range(1, 13)
    ]
    effort = [
        stint(
            number, JERK, 60, (6 if number <= 6 else 2) + number % 2, **{"Depth_(m)": 1.4 + number % 2 / 10}
        )
        for number in range(1, 13)
    ]
    rows = [
        hunch("wind", "over 16 km/h", "under 16 km/h"),
        hunch("wind", "over 16", "below 16"),
        hunch("wind", "wind over 16 kmh"),
        hunch("water temperature", "under 10 °C"),
        hunch("water temperature", "water under 10 °C", "10 to 16"),
        hunch("water temperature", "under 50 °F", "over 50 °F"),
    ]
    settings: Row = {"Units": "metric"}
    plain = worked_out(
        cells(effort, lambda row: number_of(row) <= 6, lambda row: number_of(row) > 6, of_technique)
    )
    for found in tried(write_log, made, effort, rows, settings=settings):
        assert_says(found, plain, "holds")
    half = [row for row in effort if number_of(row) % 2 == 0]
    rows = [
        hunch("wind", "over 16 km/h", when=phrase) for phrase in ("depth under 1.5 m", "depth under 150 cm")
    ]
    plain = worked_out(
        cells(half, lambda row: number_of(row) <= 6, lambda row: number_of(row) > 6, of_technique)
    )
    for found in tried(write_log, made, effort, rows, settings=settings):
        assert_says(found, plain, "cannot_tell", "few_trips")
