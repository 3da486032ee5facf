"""The report on paper: nothing cut, as many pages as it should have, charts that show something."""

import datetime as dt
import re
from collections import Counter
from collections.abc import Iterator
from dataclasses import dataclass
from pathlib import Path
from statistics import median

import openpyxl
import pytest
from openpyxl.cell import Cell
from openpyxl.workbook import Workbook
from openpyxl.worksheet.worksheet import Worksheet

from reporter.write.style import DUSK, SERIES
from tests.books import printed
from tests.books.large_log import TECHNIQUES, large_log
from tests.books.test_side_by_side import built
from tests.conftest import WriteLog
from tests.demo import make
from tests.season_logs import put_together

MOST_PAGES = {
    "At a glance": 1,
    "Contents": 1,
    "Techniques": 2,
    "Side by side": 3,
    "What worked": 1,
    "Conditions": 4,
    "Front days": 2,
    "Front days by date": 16,
    "What the days did": 5,
    "Hunches": 1,
    "Fish": 4,
    "Tackle": 8,
    "Waters": 2,
    "Water cards": 4,
    "Weeks": 2,
    "Trips": 4,
    "Paperwork": 1,
    "Rows to fix": 1,
    "How it is worked out": 8,
    "Worked through": 2,
    "Behind Techniques": 1,
    "Behind Side by side": 2,
    "Side by side by kind of day": 3,
    "Side by side trip by trip": 6,
    "Behind Hunches": 1,
    "Hunches trip by trip": 11,
    "Condition rates": 18,
    "Behind What worked": 5,
    "Behind Paperwork": 5,
    "Stint conditions": 21,
    "Stints": 16,
    "Trip techniques": 14,
    "Fish rows": 16,
}
"""Pages of each sheet of the demo's report, at most: what is for the guide is a page or a few."""

LEAST_POINTS = 6
"""Half of the letters of a sheet are as large or larger."""

FOR_THE_GUIDE = list(MOST_PAGES)[:16]


@dataclass(frozen=True)
class Printed:
    report: Path
    pdf: Path
    pages: list[printed.Page]
    book: Workbook

    def counts(self) -> Counter[str]:
        return Counter(page.sheet for page in self.pages)


def on_paper(log: Path, folder: Path) -> Printed:
    return of_report(built(log, folder), folder)


def of_report(report: Path, folder: Path) -> Printed:
    pdf = printed.printed(report, folder)
    return Printed(report, pdf, printed.pages(pdf), openpyxl.load_workbook(report, data_only=True))


@pytest.fixture(scope="module")
def demo(tmp_path_factory: pytest.TempPathFactory) -> Printed:
    return on_paper(make.SAMPLES / make.CLEAN, tmp_path_factory.mktemp("printed"))


@pytest.fixture(scope="module")
def metric(tmp_path_factory: pytest.TempPathFactory) -> Printed:
    log = make.SAMPLES / "demo season metric, saved by LibreOffice Calc.xlsx"
    return on_paper(log, tmp_path_factory.mktemp("metric"))


@pytest.fixture(scope="module")
def large(tmp_path_factory: pytest.TempPathFactory) -> Printed:
    folder = tmp_path_factory.mktemp("large")
    return on_paper(large_log(folder), folder)


@pytest.fixture(scope="module")
def small(write_log: WriteLog, tmp_path_factory: pytest.TempPathFactory) -> Printed:
    return on_paper(write_log(), tmp_path_factory.mktemp("small"))


@pytest.fixture(scope="module")
def two(tmp_path_factory: pytest.TempPathFactory) -> Printed:
    folder = tmp_path_factory.mktemp("two")
    put_together([make.SAMPLES / make.CLEAN, make.SAMPLES / make.EARLIER], folder)
    return of_report(folder / "Seasons 2025 to 2026 report.xlsx", folder)


def size_in(report: Printed) -> tuple[float, float]:
    picture = printed.pixels(report.pdf, 1)
    return picture.shape[1] / printed.DPI, picture.shape[0] / printed.DPI


def test_paper_is_that_of_the_units(demo: Printed, metric: Printed) -> None:
    assert size_in(demo) == pytest.approx((8.5, 11.0), abs=0.05)
    assert size_in(metric) == pytest.approx((8.27, 11.69), abs=0.05)


@pytest.mark.parametrize("name", ["demo", "metric", "large", "small"])
def test_no_number_is_cut(name: str, request: pytest.FixtureRequest) -> None:
    report: Printed = request.getfixturevalue(name)
    assert [(page.number, page.sheet) for page in report.pages if "###" in page.text] == []


def in_print(sheet: Worksheet) -> Iterator[Cell]:
    """The cells of a sheet that hold text and print: a sheet over several pages begins at its headings."""
    first = next(iter(re.findall(r"\$(\d+):", sheet.print_area)), "1")
    for row in sheet.iter_rows(min_row=int(first)):
        yield from (cell for cell in row if isinstance(cell.value, str))


def cut_texts(report: Printed, sheet: str, *, linked: bool) -> list[str]:
    """The texts of a sheet (of its cells that lead somewhere) that no page of it holds from end to end."""
    there = [page.drawn for page in report.pages if page.sheet == sheet]
    cells = in_print(report.book[sheet])
    texts = [str(cell.value) for cell in cells if cell.hyperlink is not None or not linked]
    return [text for text in texts if not any(printed.unbroken(text) in page for page in there)]


@pytest.mark.parametrize("name", ["demo", "two", "large", "small"])
def test_no_text_of_at_a_glance_is_cut(name: str, request: pytest.FixtureRequest) -> None:
    assert cut_texts(request.getfixturevalue(name), "At a glance", linked=False) == []


@pytest.mark.parametrize("name", ["demo", "two", "large", "small"])
def test_no_link_is_cut(name: str, request: pytest.FixtureRequest) -> None:
    report: Printed = request.getfixturevalue(name)
    cut = {sheet: cut_texts(report, sheet, linked=True) for sheet in report.counts()}
    assert {sheet: texts for sheet, texts in cut.items() if texts} == {}


@pytest.mark.parametrize("name", ["demo", "two", "large", "small"])
def test_no_word_for_the_guide_ends_out_of_sight(name: str, request: pytest.FixtureRequest) -> None:
    report: Printed = request.getfixturevalue(name)
    pages = [page for page in report.pages if page.sheet in (*FOR_THE_GUIDE, "Seasons")]
    if name == "large":
        # Its 20 techniques take two pages side by side: the second repeats the bands, and cuts text above.
        pages = [page for page in pages if page.sheet != "Conditions"]
    hidden = {(page.number, page.sheet): printed.out_of_sight(report.pdf, page) for page in pages}
    assert {page: words for page, words in hidden.items() if words} == {}


@pytest.mark.parametrize("name", ["demo", "metric", "two", "large", "small"])
def test_letters_of_every_sheet_are_large_enough_to_read(name: str, request: pytest.FixtureRequest) -> None:
    report: Printed = request.getfixturevalue(name)
    sizes: dict[str, list[float]] = {}
    for page in report.pages:
        sizes.setdefault(page.sheet, []).extend(page.letters())
    medians = {sheet: median(letters) for sheet, letters in sizes.items()}
    assert {sheet: size for sheet, size in medians.items() if size < LEAST_POINTS} == {}


@pytest.mark.parametrize("name", ["demo", "metric", "large", "small"])
def test_every_sheet_prints_in_reading_order(name: str, request: pytest.FixtureRequest) -> None:
    report: Printed = request.getfixturevalue(name)
    assert list(report.counts()) == report.book.sheetnames


def test_sheets_print_on_no_more_pages_than_they_should(demo: Printed) -> None:
    counts = demo.counts()
    assert set(counts) == set(MOST_PAGES)
    assert {name: count for name, count in counts.items() if count > MOST_PAGES[name]} == {}


def test_season_of_three_trips_takes_a_page_or_two_a_sheet(small: Printed) -> None:
    counts = small.counts()
    assert max(counts[name] for name in FOR_THE_GUIDE if name != "Water cards") <= 2
    assert counts["At a glance"] == counts["Contents"] == 1


def test_large_season_keeps_its_pages_for_the_guide_few(large: Printed) -> None:
    counts = large.counts()
    assert counts["At a glance"] == counts["Contents"] == 1
    assert counts["Techniques"] <= 4
    assert counts["Side by side"] <= 5
    assert counts["Waters"] <= 8


def test_no_page_holds_a_title_alone(large: Printed) -> None:
    for page in large.pages:
        if page.sheet in FOR_THE_GUIDE:
            lines = [line for line in page.text.splitlines() if line.strip()]
            # Header, title, way to the contents, lead and footer are five.
            assert len(lines) > 5, (page.number, page.sheet)


def test_every_technique_stands_beside_its_bar(large: Printed) -> None:
    (page,) = (page for page in large.pages if page.sheet == "At a glance")
    names = [f"technique {number}" for number in range(1, TECHNIQUES + 1)]
    shown = {name for name in names if name in page.text}
    assert len(shown) == TECHNIQUES


CHARTS = [
    ("At a glance", "Fish per rod-hour by technique, with the range your record supports", SERIES[0]),
    ("At a glance", "Fish per rod-hour, week by week", SERIES[0]),
    ("Side by side", "This against", SERIES[0]),
    ("Front days", "Pressure through the season, days 1 and 2 behind a front marked", DUSK),
    ("Fish", "measured", SERIES[0]),
    ("Tackle", "Hang-ups per rod-hour", SERIES[0]),
    ("Weeks", "Fish per rod-hour, week by week", SERIES[0]),
]


@pytest.mark.parametrize(("sheet", "title", "colour"), CHARTS)
def test_charts_show_something(sheet: str, title: str, colour: str, demo: Printed) -> None:
    there = [page for page in demo.pages if page.sheet == sheet]
    found = list(printed.titled(there, title))
    assert found, f"no page of {sheet} has a chart called {title}"
    assert any(printed.of_colour(printed.pixels(demo.pdf, page.number), colour) > 30 for page in found)


def test_page_without_a_chart_has_nothing_of_its_colour(demo: Printed) -> None:
    (page,) = (page for page in demo.pages if page.sheet == "Contents")
    assert printed.of_colour(printed.pixels(demo.pdf, page.number), SERIES[0]) <= 30


@pytest.mark.parametrize(
    ("sheet", "heading", "wide"),
    [
        ("Stints", "Technique", 3),
        ("Fish rows", "Species", 2),
        ("Trips", "Water", 2),
        ("Front days by date", "Date", 2),
        ("Side by side trip by trip", "Against", 1),
        ("Hunches trip by trip", "Compared in", 1),
    ],
)
def test_headings_repeat_on_every_page_of_a_long_table(
    sheet: str, heading: str, wide: int, demo: Printed
) -> None:
    there = [page for page in demo.pages if page.sheet == sheet]
    first = there[: len(there) // wide]  # of pages side by side those on the left come first
    assert len(first) > 1
    assert all(printed.unbroken(heading) in page.drawn for page in first)


@pytest.mark.parametrize("sheet", ["Behind Seasons", "Seasons trip by trip", "Waters", "Weeks"])
def test_headings_repeat_where_a_long_table_ends_a_sheet(sheet: str, two: Printed) -> None:
    heading = {"Waters": "Landed", "Weeks": "Rod-hours"}.get(sheet, "Compared on")
    there = [page for page in two.pages if page.sheet == sheet]
    assert len(there) > 1
    assert all(printed.unbroken(heading) in page.drawn for page in there[1:])


@pytest.mark.parametrize("name", ["demo", "two"])
def test_headings_of_every_filtered_table_stay_in_sight(name: str, request: pytest.FixtureRequest) -> None:
    book = request.getfixturevalue(name).book
    filtered = {sheet.title: sheet for sheet in book.worksheets if sheet.auto_filter.ref}
    assert {"Side by side trip by trip", "Hunches trip by trip", "Stints"} <= set(filtered)
    for title, sheet in filtered.items():
        heading = int(re.findall(r"\d+", sheet.auto_filter.ref)[0])
        assert sheet.freeze_panes == f"A{heading + 1}", title


def test_header_names_the_season(demo: Printed) -> None:
    assert all("Demo season 2026" in page.text for page in demo.pages)
    assert dt.date(2026, 11, 30).isoformat() not in demo.pages[0].text
