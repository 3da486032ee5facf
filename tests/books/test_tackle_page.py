"""The page Tackle: what it says, its live list recalculated, and what it keeps to itself."""

import csv
import math
import zipfile
from collections.abc import Sequence
from dataclasses import replace
from pathlib import Path
from typing import Any

import openpyxl
import pytest

from reporter.books.blocks import Book, Cell, Sheet, Table
from reporter.books.season.book import season_book
from reporter.books.season.tackle import tackle
from reporter.compute.report import Report, make_report
from reporter.run.build import build
from reporter.run.jobs import plan
from reporter.run.season import read_season
from reporter.write.workbook import write_book
from tests.compute.test_tackle import CATCH, hand_made
from tests.conftest import Change, WriteLog
from tests.demo import make
from tests.recalculate import disagreements, recalculated_all

SHEET = "Tackle"
Row = dict[str, Any]
EFFORT = ["Trip", "Technique", "Minutes", "Landed", "Missed", "Hang-ups", "Lures lost", "Variant", "Cover"]


def built(log: Path, folder: Path) -> Path:
    (job,) = plan([log], folder, folder / "tables")
    assert build(job, [job.log]).reading.season is not None
    return job.report


def cells_of(report: Path) -> list[tuple[Any, ...]]:
    return rows_of(report, SHEET)


def rows_of(report: Path, sheet: str, *, formulas: bool = False) -> list[tuple[Any, ...]]:
    """The rows of a sheet; a cell with a formula is its value, or the formula."""
    book = openpyxl.load_workbook(report, data_only=not formulas, read_only=True)
    rows = list(book[sheet].iter_rows(values_only=True))
    book.close()
    return rows


def lines_of(report: Path) -> list[str]:
    return [str(row[0]) for row in cells_of(report) if isinstance(row[0], str)]


def table_of(cells: list[tuple[Any, ...]], title: str) -> list[Row]:
    """The rows under a title to the line of totals, with the latter; headings that repeat are numbered."""
    top = next(place for place, row in enumerate(cells) if row[0] == title)
    names: list[str] = []
    for name in cells[top + 1]:
        names.append(f"{name} {names.count(name) + 1}" if name in names else str(name))
    found: list[Row] = []
    for row in cells[top + 2 :]:
        if isinstance(row[0], str) or all(cell is None for cell in row):
            break
        found.append(dict(zip(names, row, strict=True)))
        if row[1] == "Season":
            break
    return found


def csv_of(report: Path, name: str) -> list[dict[str, str]]:
    with (report.parent / "tables" / f"{name}.csv").open(encoding="utf-8", newline="") as file:
        return list(csv.DictReader(file))


@pytest.fixture(scope="module")
def demo(tmp_path_factory: pytest.TempPathFactory) -> Path:
    return built(make.SAMPLES / make.CLEAN, tmp_path_factory.mktemp("demo"))


@pytest.fixture(scope="module")
def by_hand(write_log: WriteLog, tmp_path_factory: pytest.TempPathFactory) -> Path:
    return built(write_log(hand_made()), tmp_path_factory.mktemp("hand"))


def near(shown: object, written: str) -> bool:
    if shown is None or not written:
        return shown in (None, "") and not written
    return math.isclose(float(str(shown)), float(written), rel_tol=1e-9, abs_tol=1e-9)


SNAGS = {
    "Trips": "trips",
    "Rod-hours": "rod_hours",
    "Hang-ups": "hang_ups",
    "Trips that say": "hang_up_trips",
    "Rod-hours that say": "hang_up_rod_hours",
    "Hang-ups per rod-hour": "hang_ups_per_rod_hour",
    "Lures lost": "lures_lost",
    "Trips that say 2": "lost_trips",
    "Rod-hours that say 2": "lost_rod_hours",
    "Lures lost per rod-hour": "lures_lost_per_rod_hour",
}
BITES = {
    "Trips that say": "bite_trips",
    "Rod-hours that say": "bite_rod_hours",
    "Missed": "missed",
    "Landed": "landed",
    "Share landed": "share_landed",
}


@pytest.mark.parametrize("by", ["technique", "cover", "variant"])
def test_page_and_csv_agree(by: str, demo: Path, by_hand: Path) -> None:
    for report in (demo, by_hand):
        cells = cells_of(report)
        rows = [row for row in csv_of(report, "tackle") if row["by"] == by]
        told = [row for row in rows if row["bite_trips"] != "0"]
        for title, columns, of in (
            ("Hang-ups and lures lost", SNAGS, rows),
            ("Bites missed against fish landed", BITES, told),
        ):
            *shown, total = table_of(cells, f"{title} by {by}")
            assert len(shown) == len(of) > 0
            for line, row in zip(shown, of, strict=True):
                assert name_of(line, by) == row["group"]
                for heading, key in columns.items():
                    assert near(line[heading], row[key]), (row["group"], heading)
            assert total[list(total)[1]] == "Season"


def name_of(line: Row, by: str) -> str:
    if by == "variant":
        return f"{line['Technique']}: {line['Variant']}" if line["Variant"] else str(line["Technique"])
    return str(line[by.capitalize()])


def test_lines_of_a_grouping_add_up_to_the_season(demo: Path) -> None:
    (season,) = csv_of(demo, "season")
    cells = cells_of(demo)
    for by in ("technique", "cover", "variant"):
        *shown, total = table_of(cells, f"Hang-ups and lures lost by {by}")
        for heading in ("Rod-hours", "Hang-ups", "Rod-hours that say", "Lures lost"):
            assert sum(row[heading] or 0 for row in shown) == pytest.approx(total[heading]), (by, heading)
        assert near(total["Rod-hours"], season["rod_hours"])
        assert total["Trips"] == int(season["trips"])
    *techniques, total = table_of(cells, "By technique")
    assert near(sum(row["Rod-hours"] for row in techniques), season["rod_hours"])
    assert near(sum(row["Landed"] for row in techniques), season["fish"])
    assert total["Share of rod-hours"] == pytest.approx(1)
    for key in ("Stints", "Rod-hours", "Lures lost", "Rod-hours that say", "Losses to expect", "To have"):
        assert sum(row[key] for row in techniques) == pytest.approx(total[key]), key


def test_sizes_and_colours_add_up_to_their_technique(demo: Path) -> None:
    cells = cells_of(demo)
    techniques = {row["Technique"]: row for row in table_of(cells, "By technique")}
    for title in ("By size", "By colour"):
        lines = table_of(cells, title)
        for name in {line["Technique"] for line in lines}:
            own = [line for line in lines if line["Technique"] == name]
            for key in ("Stints", "Rod-hours", "Landed", "Losses to expect"):
                assert sum(line[key] for line in own) == pytest.approx(techniques[name][key]), (name, key)
            assert sum(line["Share of its technique"] for line in own) == pytest.approx(1)


USED = {
    "Stints": "stints",
    "Trips": "trips",
    "Rod-hours": "rod_hours",
    "Landed": "landed",
    "Lures lost": "lures_lost",
}
TO_HAVE = {
    "Trips that say": "trips",
    "Rod-hours that say": "lost_rod_hours",
    "Lures lost": "lures_lost",
    "Lost per rod-hour": "lures_lost_per_rod_hour",
    "Next season's rod-hours": "rod_hours",
    "Losses to expect": "expected_losses",
    "To have": "to_have",
}


@pytest.mark.parametrize("by", ["technique", "size", "colour"])
def test_what_was_used_is_on_the_page_as_in_the_csv(by: str, demo: Path, by_hand: Path) -> None:
    for report in (demo, by_hand):
        rows = [row for row in csv_of(report, "tackle_used") if row["by"] == by]
        shown = [row for row in table_of(cells_of(report), f"By {by}") if row["Technique"] != "Season"]
        assert len(shown) == len(rows) > 0
        for line, row in zip(shown, rows, strict=True):
            assert line["Technique"] == row["technique"]
            assert by == "technique" or line[by.capitalize()] == (row["value"] or "not recorded")
            for heading, key in USED.items():
                assert near(line[heading], row[key]), (row["technique"], row["value"], heading)


def test_what_to_have_is_on_the_page_as_in_the_csv(demo: Path, by_hand: Path) -> None:
    for report in (demo, by_hand):
        rows = csv_of(report, "restock")
        *shown, total = table_of(cells_of(report), "By technique")
        assert [line["Technique"] for line in shown] == [row["technique"] for row in rows]
        for line, row in zip(shown, rows, strict=True):
            for heading, key in TO_HAVE.items():
                assert near(line[heading], row[key]), (row["technique"], heading)
        assert total["To have"] == sum(int(row["to_have"] or 0) for row in rows)


def test_record_says_in_words_what_too_little_stands_on(by_hand: Path) -> None:
    # Trips that say what was lost: 5, 2, 3 and none.
    *shown, _ = table_of(cells_of(by_hand), "By technique")
    assert [line["Trips that say"] for line in shown] == [5, 2, 3, 0]
    assert [line["Record"] for line in shown] == [None, "under 5 trips", "under 5 trips", "nothing told"]


def test_rate_of_under_five_trips_that_say_is_grey(demo: Path) -> None:
    page = openpyxl.load_workbook(demo)[SHEET]
    values = openpyxl.load_workbook(demo, data_only=True)[SHEET]
    places = {row[0].value: row[0].row for row in values.iter_rows(max_col=1) if row[0].value}
    top = places["Hang-ups and lures lost by technique"] + 2
    greyed = set()
    for row in range(top, top + 9):
        trips_that_say = values.cell(row, 6).value
        grey = [bool(page.cell(row, column).font.italic) for column in (5, 7, 8)]
        assert grey == [trips_that_say < 5] * 3, values.cell(row, 2).value
        greyed.add(grey[0])
    assert greyed == {True, False}


def test_chart_has_the_techniques_with_five_trips_that_say_highest_first(demo: Path) -> None:
    rows = [row for row in csv_of(demo, "tackle") if row["by"] == "technique"]
    enough = [row for row in rows if int(row["hang_up_trips"]) >= 5]
    enough.sort(key=lambda row: -float(row["hang_ups_per_rod_hour"]))
    shown = table_of(cells_of(demo), "The figures of this chart")
    assert [row["Technique"] for row in shown] == [row["group"] for row in enough]
    assert len(shown) >= 3
    assert chart_titles(demo) == ["Hang-ups per rod-hour by technique, 5 trips and more that say"]


def chart_titles(report: Path) -> list[str]:
    with zipfile.ZipFile(report) as parts:
        charts = [name for name in parts.namelist() if name.startswith("xl/charts/chart")]
        texts = [parts.read(name).decode() for name in charts]
    titles = [text.split("<a:t>")[1].split("</a:t>")[0] for text in texts]
    return [title for title in titles if "that say" in title]


def test_chart_needs_three_techniques_that_say(by_hand: Path) -> None:
    # Only Jerkbait tells on five trips what was lost; hang-ups are told on three.
    assert not chart_titles(by_hand)


def test_page_names_no_client_water_reach_or_site(write_log: WriteLog, tmp_path: Path) -> None:
    changes = hand_made()
    trips = changes["Trips"]
    assert isinstance(trips, list)
    private = {"Client": "C-77", "Reach": "Heron Bay", "Site": "ZZ-9", "Notes": "keep quiet"}
    trips[0] += private
    for row in trips[1:]:
        row += private.values()
    changes["Clients"] = [["Client"], ["C-77"]]
    report = built(write_log(changes), tmp_path)
    text = " ".join(str(cell) for row in cells_of(report) for cell in row if cell is not None)
    assert "Jerkbait" in text
    for word in (*private.values(), "Lake Arden", "T-1"):
        assert word not in text


OUTSIDE = "Outside all this, on stints that count in no rate: 1 hang-up and 4 lures lost."


def test_what_lies_outside_and_what_has_no_size_is_said(by_hand: Path) -> None:
    lines = lines_of(by_hand)
    assert OUTSIDE in lines
    # 6 + 3 + 1 rod-hours.
    for by in ("size", "colour"):
        without = f"Without a {by}: Topwater, Drop shot, Casting jig, 3 techniques, 10.0 rod-hours."
        assert [line for line in lines if line.endswith(without)]
    assert "Left out: 1 technique on a trip whose fish cannot be told apart." in lines


def test_lures_lost_without_any_effort_that_counts_are_still_said(
    write_log: WriteLog, tmp_path: Path
) -> None:
    changes = hand_made()
    trips = changes["Trips"]
    assert isinstance(trips, list)
    for row in trips[1:]:
        row[-1] = "log not finished"
    lines = lines_of(built(write_log(changes), tmp_path))
    assert "No stint has usable effort yet, so there is nothing to say of tackle." in lines
    # 2 + 1 + 1 hang-ups; 1 + 1 + 3 on Jerkbait, 4 on T-7, 1 on Topwater.
    assert "Outside all this, on stints that count in no rate: 4 hang-ups and 10 lures lost." in lines


def small(rows: Sequence[Sequence[object]]) -> dict[str, Change]:
    return {"Effort": [list(EFFORT), *map(list, rows)], "Catch": [list(CATCH)]}


def test_losses_alone_raise_a_warning(write_log: WriteLog, tmp_path: Path) -> None:
    rows = [
        ("T-001", "Drop shot", 60, 1, 0, 0, 2, "threaded", "dock"),
        ("T-002", "Drop shot", 60, 1, 0, 0, 1, "threaded", "dock"),
        ("T-003", "Drop shot", 60, 1, 0, 0, None, "threaded", "dock"),
    ]
    (said,) = (line for line in lines_of(built(write_log(small(rows)), tmp_path)) if "Caution" in line)
    assert said == (
        "Caution: Lures lost is written on 2 stints, never as 0, and blank on 1. If you write it only where "
        "there was one, these rates are too high: write 0 where there was none."
    )


def test_demo_season_has_no_warning(demo: Path) -> None:
    assert not [line for line in lines_of(demo) if "Caution" in line or "Nothing is written" in line]


def test_column_that_is_never_written_gets_a_line_and_no_table(write_log: WriteLog, tmp_path: Path) -> None:
    rows = [("T-001", "Drop shot", 60, 1), ("T-002", "Jerkbait", 60, 1)]
    report = built(write_log(small(rows)), tmp_path)
    lines = lines_of(report)
    for start in (
        "Nothing is written of hang-ups, so there are no rates of them: write in Hang-ups on Effort",
        "Nothing is written of lures lost, so there are no rates of them and nothing to have: write in",
        "Nothing is written of missed bites, so they are not held against fish landed: write in Missed",
        "No cover is written on Effort",
        "No variant is written on Effort",
        "No size is written on Effort",
        "No colour is written on Effort",
    ):
        assert [line for line in lines if line.startswith(start)], start
    assert [line for line in lines if " by " in line.lower() and not line.startswith("No ")] == []
    assert [line for line in lines if line.startswith("By ")] == ["By technique"]
    assert "What was used how much" in lines
    *techniques, total = table_of(cells_of(report), "By technique")
    assert [(row["Technique"], row["Rod-hours"]) for row in techniques] == [("Drop shot", 1), ("Jerkbait", 1)]
    assert not {"Lures lost", "To have", "Record"} & set(total)
    assert not openpyxl.load_workbook(report)[SHEET].data_validations.dataValidation


def test_tables_are_named_for_what_is_told(write_log: WriteLog, tmp_path: Path) -> None:
    rows = [("T-001", "Drop shot", 60, 1, None, None, 0, "threaded", "dock")]
    lines = lines_of(built(write_log(small(rows)), tmp_path))
    assert [line for line in lines if line.startswith("Lures lost by ")] == [
        "Lures lost by technique",
        "Lures lost by cover",
        "Lures lost by variant",
    ]


def test_bites_by_a_grouping_that_tells_no_fish_apart_are_a_line(write_log: WriteLog, tmp_path: Path) -> None:
    rows = [
        ("T-001", "Drop shot", 60, None, 1, None, None, "threaded", "dock"),
        ("T-001", "Drop shot", 60, None, 1, None, None, "threaded", "rock"),
    ]
    changes = small(rows) | {"Catch": [list(CATCH), ["T-001", "Drop shot", "largemouth bass"]]}
    report = built(write_log(changes), tmp_path)
    lines = lines_of(report)
    assert "Bites by cover: no fish can be told apart between them." in lines
    assert "Bites missed against fish landed by cover" not in lines
    (row, _) = table_of(cells_of(report), "Bites missed against fish landed by variant")
    assert (row["Missed"], row["Landed"]) == (2, 1)


def plain_numbers(report: Path) -> set[str]:
    """The headings under which numbers stand that are no formulas."""
    found: set[str] = set()
    headings: tuple[Any, ...] = ()
    for row in rows_of(report, SHEET, formulas=True):
        if row[0] in ("No.", "Line"):
            headings = row
        found |= {str(headings[place]) for place, cell in enumerate(row) if isinstance(cell, int | float)}
    return found


def test_every_number_but_those_of_lines_is_a_formula(demo: Path, by_hand: Path) -> None:
    assert plain_numbers(demo) == {"No.", "Line", "Technique no."}
    assert plain_numbers(by_hand) == {"No.", "Technique no."}  # no chart


def stint_rows(report: Path) -> list[Row]:
    """The rows of Stints that count in the rates."""
    rows = rows_of(report, "Stints")
    top = next(place for place, row in enumerate(rows) if row[0] == "Row on Effort")
    stints = [dict(zip(map(str, rows[top]), row, strict=True)) for row in rows[top + 1 :]]
    return [stint for stint in stints if stint["In the rates"]]


SAYS = {
    "": lambda _by, _stint: True,
    ": hang-ups": lambda _by, stint: stint["Hang-ups"] is not None,
    ": lures lost": lambda _by, stint: stint["Lures lost"] is not None,
    ": bites": lambda by, stint: stint["Bites count" if by == "technique" else f"Bites count by {by}"] == 1,
}
ALL_OF_THEM = dict.fromkeys(("cover", "variant"), tuple(SAYS))
USED_BY = {"technique": tuple(SAYS)[1:], **ALL_OF_THEM, "size": ("",), "colour": ("",)}


@pytest.mark.parametrize(("by", "says"), [(by, says) for by, all_of in USED_BY.items() for says in all_of])
def test_trips_are_marked_on_their_first_stint_of_a_line_and_of_all(
    by: str, says: str, demo: Path, by_hand: Path
) -> None:
    for report in (demo, by_hand):
        in_line: set[tuple[int, int]] = set()
        in_any: set[int] = set()
        for stint in stint_rows(report):
            trip, line = stint["Trip no."], stint[f"{by.capitalize()} no."]
            expected = None
            if line and SAYS[says](by, stint):
                first = trip not in in_any
                expected = 2 if first else 1 if (trip, line) not in in_line else None
                in_any.add(trip)
                in_line.add((trip, line))
            assert stint[f"Trip by {by}{says}"] == expected, stint["Row on Effort"]
        assert in_line


def test_stints_have_no_columns_for_trips_that_tackle_does_not_count(
    write_log: WriteLog, tmp_path: Path
) -> None:
    rows = [("T-001", "Drop shot", 60, 1, 0, None, None, None, "dock"), ("T-002", "Jerkbait", 60, 1)]
    report = built(write_log(small(rows)), tmp_path)
    headings = next(row for row in rows_of(report, "Stints") if row[0] == "Row on Effort")
    found = [heading for heading in headings if str(heading).startswith("Trip by")]
    assert found == ["Trip by technique: bites", "Trip by cover: bites"]


@pytest.mark.libreoffice
def test_live_cells_recalculate_to_what_is_stored(by_hand: Path, tmp_path: Path) -> None:
    page = openpyxl.load_workbook(by_hand)[SHEET]
    assert sum(cell.data_type == "f" for row in page.iter_rows() for cell in row) > 150
    assert not [text for text in disagreements(by_hand, tmp_path) if text.startswith((SHEET, "Stints"))]


# What is typed -> losses to expect of Jerkbait, Topwater, Drop shot and Casting jig, as in `hand_made`: of 24
# rod-hours 14, 6, 3 and 1. Lost by the stints that say: 5 in 11, 1 in 2, none in 3, nothing told. With blanks
# as none lost: 5 in 14 on six trips, 1 in 6 on six, none in 3 on three, none in 1 on one.
THIN = "under 5 trips"
TOLD = [None, THIN, THIN, "nothing told"]
ALL = [None, None, THIN, THIN]
TYPED: dict[str, tuple[list[Cell], list[float | None], list[str | None]]] = {
    "as it comes": ([24.0, "no"], [70 / 11, 3, 0, None], TOLD),
    "twice the hours": ([48, "no"], [140 / 11, 6, 0, None], TOLD),
    "a quarter": ([6, "no"], [70 / 44, 0.75, 0, None], TOLD),
    "blanks as none": ([24.0, "yes"], [5, 1, 0, 0], ALL),
    "both": ([48, " YES "], [10, 2, 0, 0], ALL),
    "no hours": ([0, "no"], [0, 0, 0, None], TOLD),
    "fewer than none": ([-5, "no"], [0, 0, 0, None], TOLD),
    "a word": (["many", "perhaps"], [70 / 11, 3, 0, None], TOLD),
    "nothing": ([None, None], [70 / 11, 3, 0, None], TOLD),
}


def typed_on(sheet: Sheet, cells: Sequence[Cell]) -> Sheet:
    def patched(block: Any) -> Any:
        if not (isinstance(block, Table) and block.key == "ahead"):
            return block
        return replace(block, columns={**block.columns, "value": list(cells)})

    return replace(sheet, blocks=tuple(patched(block) for block in sheet.blocks))


def in_colours() -> dict[str, Change]:
    """The log made by hand with two colours of Casting jig, half a rod-hour each."""
    changes = hand_made()
    effort = changes["Effort"]
    assert isinstance(effort, list)
    for row in effort:
        if row[1] == "Casting jig":
            row[9] = "dark" if row[10] == "dock" else "light"
    return changes


def typed_in(report: Report, cells: list[Cell]) -> Book:
    """The report's book with something typed in Tackle's cells."""
    book = season_book(report)
    own = typed_on(tackle(report), cells)
    return book._replace(sheets=tuple(own if sheet.name == own.name else sheet for sheet in book.sheets))


def values(lines: list[Row], heading: str) -> list[Any]:
    """The cells under a heading, what shows nothing as None."""
    return [None if line[heading] == "" else line[heading] for line in lines]


@pytest.mark.libreoffice
def test_what_to_have_follows_the_hours_and_the_reading_that_are_typed(
    write_log: WriteLog, tmp_path: Path
) -> None:
    season = read_season(write_log(in_colours())).season
    assert season is not None
    report = make_report(season)
    folder = tmp_path / "typed"
    folder.mkdir()
    for name, (cells, _, _) in TYPED.items():
        write_book(typed_in(report, cells), folder / f"{name}.xlsx")
    for path in recalculated_all(sorted(folder.glob("*.xlsx")), tmp_path):
        _, expected, records = TYPED[path.stem]
        cells = cells_of(path)
        *shown, total = table_of(cells, "By technique")
        to_have = [None if one is None else math.ceil(round(one, 6)) for one in expected]
        assert values(shown, "Losses to expect") == pytest.approx(expected), path.stem
        assert values(shown, "To have") == to_have, path.stem
        assert values(shown, "Record") == records
        assert total["To have"] == sum(filter(None, to_have))
        assert total["Losses to expect"] == pytest.approx(sum(filter(None, expected)))
        # Of Jerkbait 10 rod-hours dark, 4 blank; of Casting jig half and half.
        bait, jig = expected[0], expected[3]
        assert bait is not None
        halves = [None, None] if jig is None else [jig / 2, jig / 2]
        lines = table_of(cells, "By colour")
        parts = [bait * 10 / 14, bait * 4 / 14, *halves]
        assert values(lines, "Losses to expect") == pytest.approx(parts), path.stem


@pytest.mark.libreoffice
def test_trips_and_rod_hours_that_say_follow_the_reading(write_log: WriteLog, tmp_path: Path) -> None:
    season = read_season(write_log(hand_made())).season
    assert season is not None
    report = make_report(season)
    write_book(typed_in(report, [24.0, "yes"]), tmp_path / "yes.xlsx")
    (path,) = recalculated_all([tmp_path / "yes.xlsx"], tmp_path)
    *shown, total = table_of(cells_of(path), "By technique")
    assert values(shown, "Trips that say") == [6, 6, 3, 1]
    assert values(shown, "Rod-hours that say") == [14, 6, 3, 1]
    assert values(shown, "Lures lost") == [5, 1, 0, 0]
    assert (total["Trips that say"], total["Rod-hours that say"], total["Lures lost"]) == (6, 24, 6)


def test_cells_to_type_in_are_yellow_with_a_choice_of_yes_and_no(demo: Path) -> None:
    page = openpyxl.load_workbook(demo)[SHEET]
    labels = {cell.value: cell for row in page.iter_rows(max_col=2) for cell in row if cell.value}
    for label in ("Rod-hours next season", "Read a blank as none lost"):
        assert page.cell(labels[label].row, 3).fill.fgColor.rgb == "FFFFF7DB"
    assert page.cell(labels["Read a blank as none lost"].row, 3).value == "no"
    (season,) = csv_of(demo, "season")
    (hours,) = (row[2] for row in cells_of(demo) if row[1] == "Rod-hours next season")
    assert near(hours, season["rod_hours"])
    (choice,) = page.data_validations.dataValidation
    assert choice.formula1 == '"no,yes"'
    assert choice.sqref == page.cell(labels["Read a blank as none lost"].row, 3).coordinate
