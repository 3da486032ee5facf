"""Phrases of a hunch: what each means in either system of units, and what is said of the others."""

import textwrap
from collections.abc import Callable
from pathlib import Path

import openpyxl
import pytest

from reporter.compute.hunches.side import Side, read_side
from reporter.run.build import build
from reporter.run.jobs import plan
from reporter.run.season import Reading, read_season
from reporter.schema import bands
from reporter.schema.fronts import DAYS
from reporter.schema.phrases import AT_A_WATER, Phrase, phrases, read_phrase
from reporter.schema.sheets.effort import COVERS
from reporter.schema.sheets.names import SKILLS
from reporter.schema.sheets.readings import CLARITY, SKY, WATER_LEVEL
from reporter.schema.units import System
from reporter.tidy.words import NotRead
from tests.conftest import WriteLog

SYSTEMS: tuple[System, ...] = ("us", "metric")
WATERS = ("Lake Arden", "Attwater", "Onion Pond")
HUNCH = ["Hunch", "Compare", "This", "Against", "With technique", "When", "And", "Measure"]

FAHRENHEIT = 5 / 9
MPH, KMH, KNOT, FOOT = 0.44704, 1 / 3.6, 1852 / 3600, 0.3048


def both(low: float | None, high: float | None) -> tuple[float | None, float | None]:
    """The ends of a span, near enough to compare."""
    near = [None if end is None else pytest.approx(end, abs=1e-9) for end in (low, high)]
    return near[0], near[1]


def read(text: str, system: System = "us") -> Phrase:
    found = read_phrase(text, system, WATERS)
    assert found is not None, text
    return found


@pytest.mark.parametrize("system", SYSTEMS)
def test_every_phrase_reads_back_to_itself(system: System) -> None:
    every = phrases(system)
    assert len(every) > 70
    assert len({phrase.text for phrase in every}) == len(every)
    for phrase in every:
        assert read_phrase(phrase.text, system, WATERS) == phrase


def upper(text: str) -> str:
    return text.upper()


def spaced(text: str) -> str:
    return "  " + text.replace(" ", "   ") + " "


def without_degrees(text: str) -> str:
    return text.replace("°", "")


def tight_degrees(text: str) -> str:
    return text.replace(" °", "°")


@pytest.mark.parametrize("system", SYSTEMS)
@pytest.mark.parametrize("spell", [upper, spaced, without_degrees, tight_degrees])
def test_case_spaces_and_degree_signs_differ_freely(spell: Callable[[str], str], system: System) -> None:
    for phrase in phrases(system):
        found = read(spell(phrase.text), system)
        same = (found.condition, found.labels, found.low, found.high)
        assert same == (phrase.condition, phrase.labels, phrase.low, phrase.high), phrase.text


@pytest.mark.parametrize("system", SYSTEMS)
def test_phrases_name_every_band_of_what_they_speak_of(system: System) -> None:
    named: dict[str, set[str]] = {}
    for phrase in phrases(system):
        named.setdefault(phrase.condition, set()).update(phrase.labels)
    assert named["clarity"] == set(CLARITY)
    assert named["sky"] == set(SKY)
    assert named["water_level"] == set(WATER_LEVEL)
    assert named["cover"] == set(COVERS)
    assert named["skill"] == set(SKILLS)
    assert named["month"] == set(bands.MONTHS)
    assert named["wind_from"] == {band.label for band in bands.WIND_FROM}
    assert named["light"] == {band.label for band in bands.LIGHT}
    assert named["first_two_hours"] == {band.label for band in bands.TRIP_HOURS}
    assert len(named["moon"]) == 4
    assert named["day_type"] == set(DAYS.values()) - {DAYS["not_known"], DAYS["possible"]}


def test_day_one_or_two_after_a_front_is_both_days() -> None:
    assert set(read("day 1 or 2 after a front").labels) == {DAYS["day_1"], DAYS["day_2"]}
    assert read("ahead of a front").labels == (DAYS["ahead"],)


@pytest.mark.parametrize(
    ("text", "condition", "low", "high"),
    [
        ("water under 55 °F", "water_temperature", None, 23 * FAHRENHEIT),
        ("water over 55°F", "water_temperature", 23 * FAHRENHEIT, None),
        ("Water below 12.5 °C", "water_temperature", None, 12.5),
        ("water 52 to 57 F", "water_temperature", 20 * FAHRENHEIT, 25 * FAHRENHEIT),
        ("water under 50", "water_temperature", None, 10.0),
        ("water under 50.0 °F", "water_temperature", None, 10.0),
        ("water 70 °F and over", "water_temperature", 38 * FAHRENHEIT, None),
        ("water 60 degF or less", "water_temperature", None, 28 * FAHRENHEIT),
        ("wind over 20 km/h", "wind_speed", 20 * KMH, None),
        ("wind above 20 kmh", "wind_speed", 20 * KMH, None),
        ("wind under 12 kt", "wind_speed", None, 12 * KNOT),
        ("wind 5 to 12 m/s", "wind_speed", 5.0, 12.0),
        ("WIND OVER 7MPH", "wind_speed", 7 * MPH, None),
        ("wind over 7", "wind_speed", 7 * MPH, None),
        ("depth under 6 ft", "depth", None, 6 * FOOT),
        ("depth 6 to 12 feet", "depth", 6 * FOOT, 12 * FOOT),
        ("depth over 2.5 m", "depth", 2.5, None),
    ],
)
def test_any_number_and_unit_may_stand_in_a_span(
    text: str, condition: str, low: float | None, high: float | None
) -> None:
    found = read(text)
    assert (found.condition, found.labels) == (condition, ())
    assert (found.low, found.high) == both(low, high)


@pytest.mark.parametrize(
    ("text", "low", "high"),
    [
        ("water under 12", None, 12.0),
        ("wind over 20", 20 * KMH, None),
        ("depth 2 to 3", 2.0, 3.0),
        ("wind over 10 mph", 10 * MPH, None),
        ("depth under 15 m", None, 15.0),
    ],
)
def test_number_without_a_unit_is_in_the_units_of_the_log(
    text: str, low: float | None, high: float | None
) -> None:
    found = read(text, "metric")
    assert (found.low, found.high) == both(low, high)


@pytest.mark.parametrize(
    ("text", "system", "low"),
    [
        ("wind over 1.5 mph", "us", 1.5 * MPH),
        ("wind over 1.0 mph", "us", 1 * MPH),
        ("wind over 1.6 km/h", "metric", 1.6 * KMH),
        ("water over 1.0 °C", "metric", 1.0),
        ("water over 2.1 °C", "metric", 2.1),
    ],
)
def test_point_of_a_number_is_no_mere_punctuation(text: str, system: System, low: float) -> None:
    found = read(text, system)
    assert found.low == pytest.approx(low)
    word, _, span = text.partition(" ")
    side = read_side(span, "wind" if word == "wind" else "water temperature", system, (), ())
    assert isinstance(side, Side)
    assert side.phrases[0].low == pytest.approx(low)


@pytest.mark.parametrize(
    ("text", "condition", "label"),
    [
        ("stained", "clarity", "stained"),
        ("clear water", "clarity", "clear"),
        ("clear sky", "sky", "clear"),
        ("overcast", "sky", "overcast"),
        ("wind from E", "wind_from", "from E"),
        ("wind calm or light", "wind_from", "calm or light"),
        ("first two hours of light", "light", "first two hours of light"),
        ("first two hours of the trip", "first_two_hours", "first two hours of the trip"),
        ("level falling", "water_level", "falling"),
        ("on docks", "cover", "dock"),
        ("on ledges", "cover", "ledge"),
        ("on open water", "cover", "open water"),
        ("on my own brush pile", "cover", "my own brush pile"),
        ("clients new to it", "skill", "new"),
        ("handy clients", "skill", "handy"),
        ("around full moon", "moon", "full moon"),
        ("in April", "month", "April"),
        ("at: Lake Arden", "water", "Lake Arden"),
        ("At lake-arden", "water", "Lake Arden"),
        ("at:Attwater", "water", "Attwater"),
        ("at: Onion Pond", "water", "Onion Pond"),
    ],
)
def test_words_mean_their_band(text: str, condition: str, label: str) -> None:
    found = read(text)
    assert (found.condition, found.labels) == (condition, (label,))


@pytest.mark.parametrize(
    "text",
    [
        "when it is nice",
        "clear",
        "on",
        "over 10 mph",
        "50 to 60 °F",
        "wind over mph",
        "wind over ten mph",
        "water over 10 mph",
        "wind over 10 °F",
        "depth under 5 kg",
        "water 50",
        "water 50 °F",
        "at: Lake Nowhere",
        "at sunrise",
        AT_A_WATER,
        "level",
        "level up",
        "in Smarch",
        "=1+1",
        "🎣",
        "",
    ],
)
def test_what_is_no_phrase_means_nothing(text: str) -> None:
    for system in SYSTEMS:
        assert read_phrase(text, system, WATERS) is None


def test_side_may_leave_out_the_word_that_compare_says_already() -> None:
    for text in ("over 10 mph", "wind over 10 mph", "10 mph and over", "over 10"):
        side = read_side(text, "wind", "us", WATERS, ())
        assert isinstance(side, Side)
        (phrase,) = side.phrases
        assert (phrase.condition, phrase.low, phrase.high) == ("wind_speed", *both(10 * MPH, None))
    for text in ("E", "from E", "wind from E"):
        side = read_side(text, "wind from", "us", WATERS, ())
        assert isinstance(side, Side)
        assert side.phrases[0].labels == ("from E",)


def test_span_of_another_quantity_is_no_side() -> None:
    for text, compare in (("water under 50 °F", "wind"), ("wind over 10 mph", "depth"), ("stained", "sky")):
        assert isinstance(read_side(text, compare, "us", WATERS, ()), NotRead)


@pytest.mark.parametrize("text", ["wind 15 to 5 mph", "water 60 to 50 °F", "depth 10 to 5 ft"])
def test_span_with_its_ends_turned_round_is_never_one_that_nothing_lies_in(text: str) -> None:
    found = read_phrase(text, "us", WATERS)
    if found is not None:
        assert found.low is not None
        assert found.high is not None
        assert found.low < found.high


@pytest.mark.parametrize("compare", ["colour", "technique", "style", "sky", "wind"])
def test_semicolons_with_nothing_between_are_no_side(compare: str) -> None:
    assert isinstance(read_side(" ; ; ", compare, "us", WATERS, ("Drop shot",)), NotRead)


def reading_of(write_log: WriteLog, *rows: list[object], **settings: object) -> Reading:
    given: dict[str, object] = {
        "Units": "us",
        "First_day": "2026-01-01",
        "Last_day": "2026-12-31",
        **settings,
    }
    season = [["Setting", "Value"], *([name.replace("_", " "), value] for name, value in given.items())]
    return read_season(write_log({"Season": season, "Hunches": [HUNCH, *rows]}))


def said(reading: Reading) -> list[tuple[int, str, str]]:
    return [(one.row, one.heading, one.message) for one in reading.problems if one.code == "hunch_unread"]


def colours(**more: object) -> list[object]:
    row: dict[str, object] = {"Hunch": "A hunch", "Compare": "colour", "This": "dark", **more}
    return [row.get(heading) for heading in HUNCH]


LONG = "very " * 600 + "long"
UNREAD: list[tuple[str, list[object], str]] = [
    ("Compare", colours(Compare="the lure"), "colour, cover, technique, style, wind, sky"),
    ("Compare", colours(Compare="colur"), "'colour'"),
    ("Compare", colours(Compare=LONG), "colour"),
    ("This", colours(Compare="technique", This="Drop sht"), "'Drop shot'"),
    ("This", colours(Compare="technique", This="a spoon"), "Drop shot"),
    ("This", colours(Compare="style", This="fast"), "moving"),
    ("This", colours(Compare="wind", This="strong"), "over 10 mph"),
    ("This", colours(Compare="wind from", This="the lake"), "E, NW"),
    ("This", colours(Compare="water temperature", This="cold"), "under 50 °F"),
    ("This", colours(Compare="depth", This="deep"), "under 5 ft"),
    ("This", colours(Compare="sky", This="blue"), "clear, partly cloudy"),
    ("This", colours(Compare="clarity", This="tea"), "lightly stained"),
    ("This", colours(Compare="level", This="odd"), "falling"),
    ("This", colours(Compare="time of day", This="dawn"), "first two hours of light"),
    ("This", colours(Compare="month", This="Smarch"), "April"),
    ("This", colours(Compare="moon", This="blue"), "full moon"),
    ("This", colours(Compare="skill", This="pro"), "new, some, handy"),
    ("This", colours(Compare="day type", This="a good one"), "day 1 or 2 after a front"),
    ("This", colours(Compare="water", This="the sea"), "Lake Arden"),
    ("This", colours(Compare="sky", This="rain; blue"), "overcast"),
    ("This", colours(Compare="sky", This=LONG), "overcast"),
    ("Against", colours(Compare="wind", This="over 10 mph", Against="calm-ish"), "under 5 mph"),
    (
        "Against",
        colours(Compare="time of day", This="first two hours of light", Against="later on the trip"),
        "in one way",
    ),
    ("When", colours(When="when it is nice"), "water under 50 °F"),
    ("When", colours(When=AT_A_WATER), "a water's name"),
    ("When", colours(When=LONG), "on docks"),
    ("And", colours(When="stained", And="windy"), "on docks"),
    ("Measure", colours(Measure="big fish"), "Big fish from"),
]


@pytest.mark.parametrize(("heading", "row", "offered"), UNREAD)
def test_unread_hunch_is_set_aside_and_names_what_can_be_written(
    heading: str, row: list[object], offered: str, write_log: WriteLog
) -> None:
    reading = reading_of(write_log, colours(), row)
    ((place, column, message),) = said(reading)
    assert (place, column) == (3, heading)
    assert offered in message
    assert message.startswith(f"Hunches row 3, {heading}: ")
    assert len(textwrap.wrap(message, 110)) <= 2, message
    counts = reading.counts["Hunches"]
    assert (counts.read, counts.used, counts.set_aside, counts.blank, counts.not_rows) == (2, 1, 1, 0, 0)
    assert reading.season is not None
    assert [one.row for one in reading.season.hunches] == [2]


def test_metric_log_is_offered_its_own_units(write_log: WriteLog) -> None:
    for row in (
        colours(Compare="wind", This="strong"),
        colours(Compare="water temperature", This="cold"),
        colours(Compare="depth", This="deep"),
        colours(When="nice"),
    ):
        ((_, _, message),) = said(reading_of(write_log, row, Units="metric"))
        assert not any(unit in message for unit in ("mph", "°F", " ft")), message


@pytest.mark.parametrize("typed", ["a spoon", "Drop shot" + " and more" * 40 + "!"])
def test_message_that_offers_a_long_name_stays_within_two_lines(typed: str, write_log: WriteLog) -> None:
    name = "Drop shot" + " and more" * 40
    log = write_log(
        {
            "Techniques": [["Technique", "Style"], [name, "slow"]],
            "Hunches": [HUNCH, colours(Compare="technique", This=typed + "x")],
        }
    )
    ((_, _, message),) = said(read_season(log))
    assert len(textwrap.wrap(message, 110)) <= 2, message


def test_other_names_of_a_technique_and_a_water_are_known(write_log: WriteLog) -> None:
    rows = [colours(Compare="technique", This="DS"), colours(Compare="water", This="Arden")]
    rows += [colours(When="at: Arden"), colours(**{"With technique": "DS"})]
    assert not said(reading_of(write_log, *rows))


def test_hunch_whose_measure_is_no_word_of_the_list_is_not_tested_by_another(write_log: WriteLog) -> None:
    reading = reading_of(write_log, colours(Measure="heaviest fish"))
    assert reading.season is not None
    assert not reading.season.hunches


def test_rows_of_hunches_are_each_counted_once(write_log: WriteLog) -> None:
    rows = [row for _, row, _ in UNREAD]
    empty: list[object] = [None] * len(HUNCH)
    reading = reading_of(
        write_log,
        colours(),
        empty,
        *rows,
        colours(Hunch=None),
        colours(This=None),
        list(HUNCH),
        colours(Compare="style", This="slow"),
    )
    counts = reading.counts["Hunches"]
    parts = (counts.used, counts.set_aside, counts.blank, counts.not_rows)
    assert counts.read == sum(parts) == len(rows) + 6
    assert parts == (2, len(rows) + 2, 1, 1)
    assert [one.row for one in reading.season.hunches] == [2, len(rows) + 7] if reading.season else False


def page_of(log: Path, folder: Path) -> list[openpyxl.cell.Cell]:
    (job,) = plan([log], folder, folder / "tables")
    assert build(job, [log]).reading.season is not None
    book = openpyxl.load_workbook(job.report)
    return [cell for row in book["Hunches"].iter_rows() for cell in row if cell.value is not None]


def test_unread_hunches_never_stop_the_report(write_log: WriteLog, tmp_path: Path) -> None:
    log = write_log({"Hunches": [HUNCH, *(row for _, row, _ in UNREAD if "big fish" not in row)]})
    cells = page_of(log, tmp_path)
    texts = [str(cell.value) for cell in cells]
    assert f"{len(UNREAD) - 1} hunches could not be read: see Rows to fix." in texts
    assert any(text.startswith("None to test: write one a row") for text in texts)


OUR_FORMULAS = ("=SUMIFS(hunch_row_", "=IF(SUMIFS(hunch_row_")
HOSTILE = [
    "=1+1",
    '=HYPERLINK("http://x.example","y")',
    "@SUM(A1)",
    "http://x.example/",
    "🎣 dark 🎣",
    "-1+1",
]


@pytest.mark.parametrize("word", [*HOSTILE, "dark " * 1500])
def test_what_is_typed_in_a_hunch_stays_text(word: str, write_log: WriteLog, tmp_path: Path) -> None:
    log = write_log({"Hunches": [HUNCH, colours(), colours(Hunch="Next")]})
    book = openpyxl.load_workbook(log)
    for column in (1, 3):
        cell = book["Hunches"].cell(2, column)
        cell.value = word
        cell.data_type = "s"
    book.save(log)
    cells = page_of(log, tmp_path)
    formulas = [str(cell.value) for cell in cells if cell.data_type == "f"]
    assert len(formulas) >= 2  # the trips of both
    assert all(formula.startswith(OUR_FORMULAS) for formula in formulas)
    assert [cell.value for cell in cells if cell.hyperlink is not None] == ["To the contents"]
    shown = [str(cell.value) for cell in cells if cell.data_type == "s"]
    own = word.strip()
    assert own in shown
    assert any(f"colour: {own} against all else" in text for text in shown) or len(own) > 1000
    assert "Next" in shown


def test_hostile_phrases_are_only_said_back(write_log: WriteLog, tmp_path: Path) -> None:
    rows = [colours(When=word, Hunch=f"Hunch {n}") for n, word in enumerate(["x", *HOSTILE])]
    log = write_log({"Hunches": [HUNCH, *rows]})
    book = openpyxl.load_workbook(log)
    for place, word in enumerate(HOSTILE, start=3):
        cell = book["Hunches"].cell(place, 6)
        cell.value = word
        cell.data_type = "s"
    book.save(log)
    (job,) = plan([log], tmp_path, None)
    built = build(job, [log])
    assert len(said(built.reading)) == 1 + len(HOSTILE)
    page = openpyxl.load_workbook(job.report)["Rows to fix"]
    texts = [str(cell.value) for row in page.iter_rows() for cell in row if cell.data_type == "s"]
    assert all(any(word in text for text in texts) for word in HOSTILE)


@pytest.mark.parametrize(
    ("row", "heading", "offered"),
    [
        (colours(Against="light; dark"), "Against", "share nothing"),
        (colours(Compare="wind", This="over 10 mph", Against="under 15 mph"), "Against", "share nothing"),
        (colours(Compare="sky", This="clear", Against="rain; clear sky"), "Against", "share nothing"),
        ({"With technique": "Drp shot"}, "With technique", "Did you mean 'Drop shot'?"),
    ],
)
def test_sides_that_overlap_and_techniques_that_are_none_are_not_tested(
    row: list[object] | dict[str, object], heading: str, offered: str, write_log: WriteLog
) -> None:
    typed = colours(**row) if isinstance(row, dict) else row
    reading = reading_of(write_log, typed)
    ((_, where, message),) = said(reading)
    assert where == heading
    assert offered in message
    assert reading.season is not None
    assert reading.season.hunches == ()


def test_sides_that_touch_do_not_overlap(write_log: WriteLog) -> None:
    touching = colours(Compare="wind", This="over 10 mph", Against="under 10 mph")
    assert said(reading_of(write_log, touching)) == []
