"""A client's copy: what it says, and in which words."""

import datetime as dt
import math
from dataclasses import replace
from pathlib import Path

import pytest

from reporter.books.blocks import Book, Chart, Sheet, Table, Text
from reporter.books.client.book import client_book
from reporter.books.client.letter import Letter
from reporter.books.client.words import fish_words, length_words, weather_words, weight_words
from reporter.compute.clients.figures import Fate, SpeciesCount
from reporter.compute.clients.model import Caught, Client, Day, DayWeather, TiedOn
from reporter.schema.species import SPECIES
from reporter.schema.units import System
from reporter.tidy.moments import LIGHT_WIND
from reporter.write.workbook import write_book
from tests.books.printed import pages_printed

LETTER = Letter("The outfit", "Thank you.", "Write to the dock.", "us")
DAYS = [dt.date(2026, 4, 18) + dt.timedelta(days=7 * number) for number in range(4)]
WORM = TiedOn("Stick worm", variant="wacky", size="5 in", rigging="weightless", tackle_list="a pack of each")


def landed(count: int = 1, technique: str = "Stick worm", *, own: bool = True, **more: object) -> Caught:
    fish = {"species": "LMB", "fate": "released", **more}
    return Caught(own=own, technique=technique, count=count, **fish)  # type: ignore[arg-type]


def day(*caught: Caught, number: int = 0, **more: object) -> Day:
    given = {"water": "Lake Arden", "hours": 4.5, "alone": True, "tied_on": (WORM,), **more}
    return Day(DAYS[number], 360.0, caught=caught, **given)  # type: ignore[arg-type]


def book(*days: Day, name: str = "Ada", youth: bool = False) -> Book:
    return client_book(Client(name, youth, days), LETTER)


def lines(sheet: Sheet) -> list[str]:
    return [line.text for block in sheet.blocks if isinstance(block, Text) for line in block.lines]


def table(sheet: Sheet, key: str) -> Table:
    return next(block for block in sheet.blocks if isinstance(block, Table) and block.key == key)


def test_blank_day_is_kind_and_true() -> None:
    made = book(day(blank=True, weather=DayWeather(water_temp_c=14.4, sky="overcast"), words="Next time"))
    first, tied = made.sheets
    assert lines(first) == [
        "Your day on the water",
        "For Ada with The outfit",
        "Sat Apr 18, 2026, Lake Arden, 4.5 hours fished.",
        "No fish came to the boat this time. It happens to everyone who fishes.",
        "How it was",
        "We tried: Stick worm.",
        "Water 58 °F. Overcast.",
        "From your guide: Next time",
        "Thank you.",
        "Write to the dock.",
    ]
    assert not [block for block in first.blocks if isinstance(block, Table | Chart)]
    assert table(tied, "tied").columns["rigging"] == ["weightless"]


@pytest.mark.parametrize(
    ("name", "youth", "said"),
    [
        ("Ada", False, "For Ada with The outfit"),
        ("Ada", True, "For Ada with The outfit"),
        ("", True, "For our youth angler with The outfit"),
        ("", False, "With The outfit"),
    ],
)
def test_name_stands_only_where_it_may(name: str, youth: bool, said: str) -> None:
    assert lines(book(day(), name=name, youth=youth).sheets[0])[1] == said


@pytest.mark.parametrize(
    ("fish", "said"),
    [
        (
            [landed(6), landed(2, "Tube"), landed(1, "Jerkbait")],
            "6 of your 9 came on the Stick worm, 2 on the Tube and 1 on the Jerkbait.",
        ),
        ([landed(6), landed(3, "Tube")], "6 of your 9 came on the Stick worm and 3 on the Tube."),
        ([landed(6), landed(3, "")], "6 of your 9 came on the Stick worm."),
        ([landed(3)], "All 3 of your fish came on the Stick worm."),
        ([landed(1)], "Your fish came on the Stick worm."),
        ([landed(2)], "Both of your fish came on the Stick worm."),
        ([landed(3, own=False)], "All 3 of your party's fish came on the Stick worm."),
        (
            [landed(7, own=False), landed(4, "Tube", own=False)],
            "7 of your party's 11 came on the Stick worm and 4 on the Tube.",
        ),
    ],
)
def test_what_worked_is_said_in_counts(fish: list[Caught], said: str) -> None:
    assert said in lines(book(day(*fish)).sheets[0])


def test_several_trips_have_firsts_bests_and_a_chart() -> None:
    days = [
        day(landed(length_mm=400.05, weight_g=1020.58)),
        day(landed(length_mm=431.8, estimated=True), number=1),
        day(landed(species="SMB", fate="kept"), number=2),
    ]
    first, trips, _ = book(*days).sheets
    said = lines(first)
    assert "3 trips, 13.5 hours fished, from Sat Apr 18, 2026 to Sat May 2, 2026." in said
    assert "Largemouth bass: 17 in (estimated), Sat Apr 25, 2026, on the Stick worm" in said
    assert said[said.index("Your firsts on these trips") + 1 :][:2] == [
        "Largemouth bass: Sat Apr 18, 2026",
        "Smallmouth bass: Sat May 2, 2026",
    ]
    assert any("local advice on eating fish" in line for line in said)
    (chart,) = [block for block in first.blocks if isinstance(block, Chart)]
    assert chart.title == "Your fish, trip by trip"
    assert table(trips, "day").columns["fish"] == [1, 1, 1]
    assert first.pages_tall == 1


def test_best_five_together_stand_with_what_was_estimated() -> None:
    five = [landed(length_mm=25.4 * inches, estimated=inches == 14) for inches in (18, 17, 16, 15, 14, 10)]
    assert "Your best five together: 80 in (1 of them estimated)" in lines(book(day(*five)).sheets[0])


def test_two_trips_have_no_chart() -> None:
    first, *_ = book(day(landed()), day(landed(), number=1)).sheets
    assert not [block for block in first.blocks if isinstance(block, Chart)]


def test_chart_sets_nobody_against_the_party() -> None:
    days = [day(landed(), landed(9, own=False), number=number, alone=False) for number in range(3)]
    first, trips, _ = book(*days).sheets
    (chart,) = [block for block in first.blocks if isinstance(block, Chart)]
    assert [series.values for series in chart.series] == ["day.fish"]
    assert chart.title == "Fish of you and your party, trip by trip"
    assert table(trips, "day").columns["own"] == [1, 1, 1]


def test_own_column_never_holds_a_zero_beside_the_party() -> None:
    days = [day(landed(9, own=False), number=0, alone=False), day(landed(), number=1)]
    _, trips, _ = book(*days).sheets
    assert table(trips, "day").columns["own"] == [None, 1]
    assert table(trips, "day").columns["party"] == [9, None]


def test_only_unnamed_fish_are_called_the_partys_and_no_column_says_yours() -> None:
    first, *_ = book(day(landed(9, own=False), alone=False), day(number=1)).sheets
    assert "own" not in table(first, "fish").columns
    assert table(first, "fish").columns["party"] == [9]


def test_water_that_may_not_be_told_leaves_no_gap() -> None:
    assert lines(book(day(water="")).sheets[0])[2] == "Sat Apr 18, 2026, 4.5 hours fished."


def test_metric_copy_is_on_a4_with_its_own_dates_and_units() -> None:
    letter = Letter("", "Thank you.", "", "metric")
    made = client_book(Client("", False, (day(landed(length_mm=465.0, weight_g=2040.0)),)), letter)
    assert made.paper == "a4"
    said = lines(made.sheets[0])
    assert said[1] == "Sat 18 Apr 2026, Lake Arden, 4.5 hours fished."
    assert "Largemouth bass: 46.5 cm, 2.04 kg (measured), Sat 18 Apr 2026, on the Stick worm" in said


def test_copy_says_nothing_of_who_made_it_or_when() -> None:
    made = book(day(), day(number=3))
    assert (made.mark, made.created, made.title) == ("client", DAYS[3], "Your days on the water")


def test_no_rate_range_or_loss_is_ever_said() -> None:
    made = book(
        *(day(landed(3, length_mm=400.0), landed(2, own=False), number=number) for number in range(4))
    )
    headings = [
        field.heading
        for sheet in made.sheets
        for block in sheet.blocks
        if isinstance(block, Table)
        for field in block.fields
    ]
    every = " ".join([*headings, *(line for sheet in made.sheets for line in lines(sheet))]).casefold()
    for word in ("per rod", "rod-hour", "per hour", "range", "lost", "missed", "hang-up", "average"):
        assert word not in every


def test_what_was_tied_on_is_a_line_a_technique_with_all_that_was_written() -> None:
    days = [
        day(tied_on=(WORM, TiedOn("Tube", colour="dark"))),
        day(
            number=1,
            tied_on=(
                TiedOn("Stick worm", variant="neko", retrieve="shaken", size="5 in", rigging="weightless"),
            ),
        ),
    ]
    columns = table(book(*days).sheets[-1], "tied").columns
    assert columns["technique"] == ["Stick worm", "Tube"]
    assert columns["as_fished"] == ["wacky, neko, shaken", None]
    assert columns["size"] == ["5 in", None]
    assert columns["tackle_list"] == ["a pack of each", None]


def test_nothing_tied_on_leaves_the_sheet_out() -> None:
    assert len(book(day(tied_on=())).sheets) == 1


@pytest.mark.parametrize(
    ("grams", "system", "said"),
    [
        (4.5 * 453.59237, "us", "4 lb 8 oz"),
        (2 * 453.59237, "us", "2 lb"),
        (0.75 * 453.59237, "us", "12 oz"),
        (4.99 * 453.59237, "us", "4 lb 15.8 oz"),
        (4.999 * 453.59237, "us", "5 lb"),
        (2040.0, "metric", "2.04 kg"),
        (math.nan, "us", ""),
    ],
)
def test_weight_is_said_as_it_is_weighed(grams: float, system: System, said: str) -> None:
    assert weight_words(grams, system) == said


@pytest.mark.parametrize(
    ("mm", "system", "said"),
    [(463.55, "us", "18.25 in"), (457.2, "us", "18 in"), (460.0, "metric", "46 cm"), (math.nan, "us", "")],
)
def test_length_is_said_as_it_is_measured(mm: float, system: System, said: str) -> None:
    assert length_words(mm, system) == said


@pytest.mark.parametrize(
    ("counts", "said"),
    [
        ([SpeciesCount("LMB", Fate(3, 1, 2), Fate())], "3 largemouth bass (1 kept, 2 released)"),
        ([SpeciesCount("LMB", Fate(3, 0, 3), Fate())], "3 largemouth bass (all released)"),
        ([SpeciesCount("LMB", Fate(1, 1, 0), Fate())], "1 largemouth bass (kept)"),
        ([SpeciesCount("CRA", Fate(2), Fate())], "2 crappie"),
        (
            [SpeciesCount("LMB", Fate(1), Fate()), SpeciesCount("BLB", Fate(4), Fate())],
            "1 largemouth bass and 4 more black bass",
        ),
        ([SpeciesCount("BLB", Fate(4), Fate())], "4 black bass"),
        ([SpeciesCount("", Fate(4), Fate())], "4 fish"),
        ([SpeciesCount("LMB", Fate(), Fate(2))], ""),
    ],
)
def test_fish_are_said_in_words(counts: list[SpeciesCount], said: str) -> None:
    assert fish_words(counts, own=True) == said


@pytest.mark.parametrize(
    ("weather", "system", "said"),
    [
        (DayWeather(), "us", ""),
        (
            DayWeather(water_temp_c=20.0, clarity="stained", water_level="rising"),
            "us",
            "Water 68 °F, stained, level rising.",
        ),
        (DayWeather(air_low_c=10.0, air_high_c=20.0, sky="clear"), "metric", "Air 10 to 20 °C, sky clear."),
        (DayWeather(air_low_c=10.0, air_high_c=10.2), "metric", "Air 10 °C."),
        (DayWeather(wind_from_deg=315.0, wind_speed_ms=4.4704), "us", "Wind NW 10 mph."),
        (DayWeather(wind_from_deg=LIGHT_WIND), "us", "Wind light."),
        (DayWeather(wind_speed_ms=5.0, sky="rain"), "metric", "Rain, wind 18 km/h."),
    ],
)
def test_weather_is_a_line(weather: DayWeather, system: System, said: str) -> None:
    assert weather_words(weather, system) == said


@pytest.mark.libreoffice
def test_first_page_is_one_page_however_much_stands_on_it(tmp_path: Path) -> None:
    kinds = [kind.code for kind in SPECIES]
    days = [
        day(
            *(
                landed(1, species=kind, length_mm=300.0 + place, weight_g=300.0)
                for place, kind in enumerate(kinds)
            ),
            number=number,
        )
        for number in range(4)
    ]
    made = book(*days)
    first = replace(
        made.sheets[0], blocks=tuple(b for b in made.sheets[0].blocks if not isinstance(b, Chart))
    )
    write_book(made._replace(sheets=(first,)), tmp_path / "copy.xlsx")
    assert len(kinds) > 40
    assert pages_printed(tmp_path / "copy.xlsx", tmp_path) == 1


def test_day_of_which_nobody_wrote_whether_anything_was_landed_says_nothing_of_fish() -> None:
    said = " ".join(lines(book(day()).sheets[0]))
    assert "We tried: Stick worm." in said
    assert "came to the boat" not in said


def test_note_on_unnamed_fish_stands_only_under_a_best_that_is_one() -> None:
    unnamed = landed(own=False)
    first, *_ = book(day(unnamed)).sheets
    assert not [line for line in lines(first) if line.startswith(("Your best", "Fish without a name"))]
    first, *_ = book(day(landed(own=False, length_mm=400.0))).sheets
    assert [line for line in lines(first) if line.startswith("Fish without a name")]


def test_no_more_than_six_kinds_have_a_best_or_a_first() -> None:
    kinds = [kind.code for kind in SPECIES[:9]]
    days = [
        day(*(landed(species=kind, length_mm=300.0) for kind in kinds), number=number) for number in range(2)
    ]
    said = lines(book(*days).sheets[0])
    assert sum("(measured)" in line for line in said) == 6
