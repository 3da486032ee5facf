"""The page Fish as it is read: against the log itself, and on logs with little in them."""

import csv
import math
import re
import shutil
import zipfile
from collections import defaultdict
from collections.abc import Sequence
from dataclasses import dataclass
from fractions import Fraction
from pathlib import Path

import openpyxl
import pytest

from reporter.run.adopt import adopt
from reporter.run.build import build, plan
from tests.compute.fish_logs import CATCH, LMB, NO_TALLY, fish_row
from tests.conftest import Change, WriteLog
from tests.demo import make
from tests.recalculate import disagreements
from tests.run.test_own_layouts import confirm

SHEET = "Fish"
OF_CAUGHT = re.compile(r"[\d,]+ measured, [\d,]+ weighed of [\d,]+ caught")
Row = dict[str, object]
Cells = Sequence[tuple[object, ...]]


@dataclass(frozen=True)
class Page:
    """The sheet Fish of a report: its lines of text, its tables by title, its charts' titles."""

    report: Path
    lines: tuple[str, ...]
    tables: dict[str, list[Row]]
    charts: tuple[str, ...]

    def table(self, words: str) -> list[Row]:
        (title,) = (title for title in self.tables if title.startswith(words))
        return self.tables[title]

    def says(self, words: str) -> bool:
        return any(words in line for line in self.lines)


def built(log: Path, folder: Path) -> Page:
    (job,) = plan([log], folder, folder / "tables")
    assert build(job, [job.log]).reading.season is not None
    cells = list(openpyxl.load_workbook(job.report, data_only=True)[SHEET].iter_rows(values_only=True))
    lines = tuple(str(row[0]) for row in cells if isinstance(row[0], str))
    return Page(job.report, lines, _tables(cells), _charts(job.report))


def _tables(cells: Cells) -> dict[str, list[Row]]:
    """Title of a table -> its rows; a heading row is one of which several cells are text."""
    found: dict[str, list[Row]] = {}
    for top, row in enumerate(cells):
        if sum(isinstance(cell, str) for cell in row) < 2 or cells[top - 1][0] in (None, "No."):
            continue
        if not str(row[0]).startswith(("No.", "Length from")):
            continue
        names = [str(cell) for cell in row if cell is not None]
        rows = []
        for below in cells[top + 1 :]:
            if all(cell is None for cell in below[1:]):
                break
            rows.append(dict(zip(names, below, strict=False)))
        found[str(cells[top - 1][0])] = rows
    return found


def _charts(report: Path) -> tuple[str, ...]:
    with zipfile.ZipFile(report) as file:
        texts = [file.read(name).decode() for name in file.namelist() if name.startswith("xl/charts/chart")]
    titles = [re.search(r"<c:title>.*?<a:t>(.*?)</a:t>", text, re.DOTALL) for text in texts]
    return tuple(found[1] for found in titles if found and OF_CAUGHT.search(found[1]))


def csv_table(page: Page, name: str) -> list[dict[str, str]]:
    with (page.report.parent / "tables" / f"{name}.csv").open(encoding="utf-8", newline="") as file:
        return list(csv.DictReader(file))


@pytest.fixture(scope="module")
def demo(tmp_path_factory: pytest.TempPathFactory) -> Page:
    return built(make.SAMPLES / make.CLEAN, tmp_path_factory.mktemp("demo"))


@pytest.fixture(scope="module")
def all_measured(tmp_path_factory: pytest.TempPathFactory) -> Page:
    """The demo season of a guide who says that he measures every fish."""
    folder = tmp_path_factory.mktemp("measured")
    book = openpyxl.load_workbook(make.SAMPLES / make.CLEAN)
    for row in book["Season"].iter_rows():
        if row[0].value == "All fish measured":
            row[1].value = "yes"
    book.save(folder / "log.xlsx")
    return built(folder / "log.xlsx", folder)


@pytest.fixture(scope="module")
def catch() -> list[Row]:
    """The rows of Catch of the demo season, as openpyxl reads them."""
    cells = list(openpyxl.load_workbook(make.SAMPLES / make.CLEAN)["Catch"].iter_rows(values_only=True))
    rows = [dict(zip(map(str, cells[0]), row, strict=True)) for row in cells[1:]]
    return [row for row in rows if row["Species"] not in (None, "none")]


def value(cell: object) -> float:
    """A number that a cell shows."""
    assert isinstance(cell, int | float)
    return float(cell)


def inches(cell: object) -> float:
    """A length as typed: 15.5 or 20 3/4."""
    return float(sum(Fraction(part) for part in str(cell).split()))


def counts(catch: list[Row]) -> dict[str, list[int]]:
    """Species -> fish, measured, weighed, by plain counting over the log."""
    found: dict[str, list[int]] = defaultdict(lambda: [0, 0, 0])
    for row in catch:
        count, told = int(str(row["Count"] or 1)), row["Measured"] != "estimated"
        sums = found[str(row["Species"]).capitalize()]
        sums[0] += count
        sums[1] += count * (told and row["Length (in)"] is not None)
        sums[2] += told and row["Weight (lb)"] is not None and count == 1
    return found


def test_species_are_those_of_the_log_most_first(demo: Page, catch: list[Row]) -> None:
    rows = [row for row in demo.table("By species") if row["No."] is not None]
    expected = counts(catch)
    assert {row["Species"]: [row["Caught"], row["Measured"], row["Weighed"]] for row in rows} == expected
    caught = [value(row["Caught"]) for row in rows]
    assert caught == sorted(caught, reverse=True)


def test_all_fish_are_what_at_a_glance_says(demo: Page, all_measured: Page) -> None:
    for page in (demo, all_measured):
        book = openpyxl.load_workbook(page.report, data_only=True)
        glance, record = (
            {row[0]: row[1] for row in book[name].iter_rows(max_col=2, values_only=True)}
            for name in ("At a glance", "How it is worked out")
        )
        total = page.table("By species")[-1]
        assert total["Species"] == "All"
        assert total["Caught"] == glance["Landed"] + record["Fish outside the rates"]
        assert total["Caught"] == sum(value(total[key]) for key in ("Kept", "Released", "Fate not known"))


def test_tallied_fish_stand_in_a_line_of_their_own(demo: Page, catch: list[Row]) -> None:
    tallied = next(row for row in demo.table("By species") if row["Species"] == "Tallied, kind not written")
    rows = sum(count for count, _, _ in counts(catch).values())
    assert tallied["Caught"] == value(demo.table("By species")[-1]["Caught"]) - rows
    assert (tallied["Kept"], tallied["Released"], tallied["Measured"], tallied["Weighed"]) == (0, 0, 0, 0)


def test_ten_best_stand_in_the_log_where_the_page_says(demo: Page) -> None:
    log = openpyxl.load_workbook(make.SAMPLES / make.CLEAN)["Catch"]
    names = [cell.value for cell in log[1]]
    lengths = []
    for row in demo.table("The best fish of the season"):
        typed = dict(zip(names, (cell.value for cell in log[int(str(row["Row on Catch"]))]), strict=True))
        assert inches(typed["Length (in)"]) == pytest.approx(row["Length (in)"])
        assert str(typed["Species"]).capitalize() == row["Species"]
        assert typed["Technique"] == row["Technique"]
        lengths.append(value(row["Length (in)"]))
    assert len(lengths) == 10
    assert lengths == sorted(lengths, reverse=True)


def test_no_length_of_a_species_counted_beats_the_ten_best(demo: Page, catch: list[Row]) -> None:
    bass = [row for row in catch if str(row["Species"]).endswith(" bass")]
    longest = sorted((inches(row["Length (in)"]) for row in bass if row["Length (in)"]), reverse=True)
    shown = [row["Length (in)"] for row in demo.table("The best fish of the season")]
    assert shown == pytest.approx(longest[:10])


def test_charts_name_what_was_measured_weighed_and_caught(demo: Page, catch: list[Row]) -> None:
    # From 20 measured fish on, three at most, those measured most.
    enough = [(measured, name) for name, (_, measured, _) in counts(catch).items() if measured >= 20]
    titles = []
    for _, name in sorted(enough, reverse=True)[:3]:
        caught, measured, weighed = counts(catch)[name]
        titles.append(f"{name}: {measured} measured, {weighed} weighed of {caught} caught")
    assert sorted(demo.charts) == sorted(titles)


def test_lengths_are_counted_by_inch(demo: Page, catch: list[Row]) -> None:
    plain: dict[int, int] = defaultdict(int)
    for row in catch:
        if row["Species"] == LMB and row["Length (in)"] is not None and row["Measured"] != "estimated":
            plain[math.floor(inches(row["Length (in)"]))] += int(str(row["Count"] or 1))
    rows = demo.table("The figures of the charts")
    assert {
        row["Length from (in)"]: row["Largemouth bass"] for row in rows if row["Largemouth bass"]
    } == plain
    steps = [int(str(row["Length from (in)"])) for row in rows]
    assert steps == list(range(steps[0], steps[-1] + 1))


def test_big_fish_are_those_of_the_log(demo: Page, catch: list[Row]) -> None:
    # Big fish from 18 in on Season; each of them was on a technique in the rates.
    big = [
        row
        for row in catch
        if str(row["Species"]).endswith(" bass") and inches(row["Length (in)"] or 0) >= 18
    ]
    rows = demo.table("Big fish (from 18 in) per 10 rod-hours")
    season = rows[-1]
    assert season["Big fish"] == len(big) == sum(value(row["Big fish"]) for row in rows[:-1])
    for row in rows:
        rate = 10 * value(row["Big fish"]) / value(row["Rod-hours"])
        assert row["Per 10 rod-hours"] == pytest.approx(rate)
        assert value(row["From"]) <= rate <= value(row["To"])


def test_psd_is_refused_where_a_tally_holds_more_than_was_measured(demo: Page) -> None:
    basis = {row["Species"]: row for row in demo.table("What a PSD can rest on")}
    bass = basis["Largemouth bass"]
    # 143 of 185 + 169 is 40 %.
    assert (bass["Caught"], bass["May be more"], bass["Measured"], bass["PSD"]) == (
        185,
        169,
        143,
        "too few measured",
    )
    assert basis["Smallmouth bass"]["PSD"] == "too few to say"
    assert not any(title.startswith("Angling PSD,") for title in demo.tables)
    assert demo.says("To have it, measure every fish and give each a row on Catch")
    assert csv_table(demo, "length_classes") == []


def test_psd_is_an_angling_psd_with_the_caution(all_measured: Page) -> None:
    assert all_measured.says("never compare an angling PSD with one from electrofishing")
    rows = all_measured.table("Angling PSD,")
    assert [row["Which PSD"] for row in rows[:4]] == ["PSD", "PSD-P", "PSD-M", "PSD-T"]
    assert [row["Length from (in)"] for row in rows[:4]] == [12, 15, 20, 25]
    for row in rows:
        psd = 100 * value(row["Fish of it"]) / value(row["Of stock fish"])
        assert row["Of 100"] == pytest.approx(psd)
        assert (row["Remark"] == "rough") == (value(row["Of stock fish"]) < 100)


def test_shares_of_length_classes_add_up_to_100(all_measured: Page) -> None:
    sums: dict[str, float] = defaultdict(float)
    for row in all_measured.table("By length class"):
        sums[str(row["Species"])] += value(row["Of 100 stock fish"])
        if row["From"] is not None:
            assert 0 <= value(row["From"]) <= value(row["Of 100 stock fish"]) <= value(row["To"]) <= 100
    assert sums == pytest.approx({"Largemouth bass": 100, "Spotted bass": 100})


def test_relative_weight_stands_with_the_step_of_the_scale(demo: Page) -> None:
    assert demo.says("100 is a plump fish, not an average one")
    (step,) = (line for line in demo.lines if line.startswith("Your weights go by 1 oz"))
    # The smallest class printed begins at 11 in: 1 oz / (10^(-5.392 + 3.215 log10 279.4) g) = 9.5 points.
    grams = 10 ** (-5.392 + 3.215 * math.log10(11 * 25.4))
    assert step.endswith(f"is worth {100 * 28.349523125 / grams:.0f} points.")
    assert "spotted bass of 11 to 14 in" in step
    assert all(value(row["Measured and weighed"]) >= 5 for row in demo.table("Average relative weight"))


def test_measured_and_weighed_of_caught_stand_beside_every_table_and_chart(all_measured: Page) -> None:
    columns = {"Caught", "Measured", "Weighed"}
    lines = list(all_measured.lines)
    for title, rows in all_measured.tables.items():
        after = lines[lines.index(title) + 1 :]
        note = next(line for line in after if len(line) > 40)
        assert columns <= rows[0].keys() or OF_CAUGHT.search(note), title


def test_no_client_and_no_angler_is_named(demo: Page) -> None:
    log = openpyxl.load_workbook(make.SAMPLES / make.CLEAN)
    codes = {str(row[0]) for row in log["Clients"].iter_rows(min_row=2, values_only=True) if row[0]}
    book = openpyxl.load_workbook(demo.report, data_only=True)[SHEET]
    shown = {str(cell) for row in book.iter_rows(values_only=True) for cell in row if cell is not None}
    assert codes
    assert not codes & shown


def test_page_and_csv_agree(all_measured: Page) -> None:
    species = csv_table(all_measured, "species")
    rows = [row for row in all_measured.table("By species") if row["No."] is not None]
    assert [row["Species"] for row in rows] == [row["species"].capitalize() for row in species]
    assert [row["Caught"] for row in rows] == [float(row["fish"]) for row in species]
    classes = csv_table(all_measured, "length_classes")
    shown = all_measured.table("Angling PSD,")
    told = [row for row in classes if row["class_no"] != "1"]
    for row, line in zip(shown, told, strict=True):
        for heading, key in (("Of 100", "psd"), ("From", "psd_low"), ("To", "psd_high")):
            assert row[heading] == pytest.approx(float(line[key]), abs=1e-9)
    big = csv_table(all_measured, "big_fish")
    for row, line in zip(all_measured.table("Big fish"), big, strict=False):
        assert row["Technique"] == line["technique"]
        assert row["Per 10 rod-hours"] == pytest.approx(float(line["big_per_10_rod_hours"]))
    assert {row["unit"] for row in csv_table(all_measured, "length_frequency")} == {"in"}
    assert {row["length_system"] for row in csv_table(all_measured, "fish") if row["length_mm"]} == {"us"}


def little(**changes: Change) -> dict[str, Change]:
    return {"Season": [["Setting", "Value"], ["Units", "us"], ["Last day", "2026-11-30"]], **changes}


def no_effort() -> Change:
    return [NO_TALLY[0]]


CASES: dict[str, dict[str, Change]] = {
    "three trips": little(),
    "no catch": little(Catch=[CATCH]),
    "no effort": little(Effort=no_effort()),
    "no fish": little(Effort=NO_TALLY, Catch=[CATCH]),
    "no length": little(
        Catch=[CATCH, fish_row(1, LMB)], Season=[["Setting", "Value"], ["Big fish from", "18 in"]]
    ),
}


@pytest.mark.parametrize(
    ("case", "said"),
    [
        ("three trips", ["Set Big fish from on the sheet Season", "No species has 20 measured fish"]),
        ("three trips", ["No length class has 5 fish both measured and weighed"]),
        ("no catch", ["No fish has a row on Catch", "All: 6 landed in the rates and 0 outside them"]),
        ("no effort", ["All: 0 landed in the rates and 3 outside them"]),
        ("no fish", ["No fish is written."]),
        ("no length", ["No fish in the rates has a length", "No fish of the species counted has a length"]),
    ],
)
def test_logs_with_little_say_what_is_missing(
    case: str, said: list[str], write_log: WriteLog, tmp_path: Path
) -> None:
    page = built(write_log(CASES[case]), tmp_path)
    for words in said:
        assert page.says(words), page.lines
    assert page.charts == ()


def test_weight_of_several_fish_is_said_not_to_count(write_log: WriteLog, tmp_path: Path) -> None:
    rows = [fish_row(1, LMB, 15, 4.0, None, 2)]
    page = built(write_log(little(Catch=[CATCH, *rows], Effort=NO_TALLY)), tmp_path)
    assert page.says("The weight of a row for several fish is not used")
    (best,) = page.table("The best fish of the season")
    assert (best["Fish"], best["Weight (lb)"]) == (2, None)


def test_metric_log_has_its_own_steps_and_categories(write_log: WriteLog, tmp_path: Path) -> None:
    head = [*CATCH[:4], "Length (cm)", "Weight (kg)", *CATCH[6:]]
    rows = [fish_row(1 + n % 3, LMB, 28 + n, round(0.35 + n / 20, 2)) for n in range(24)]
    changes = little(Catch=[head, *rows], Effort=NO_TALLY, Season=[["Setting", "Value"], ["Units", "metric"]])
    page = built(write_log(changes), tmp_path)
    # 22 of 24 are 30 cm or longer (12 in would be 30.48 cm), 14 are 38 cm or longer.
    psd = page.table("Angling PSD,")
    assert [row["Fish of it"] for row in psd] == [22, 14, 1, 0]
    assert [row["Length from (cm)"] for row in psd] == [30, 38, 51, 63]
    assert [row["Largemouth bass"] for row in page.table("The figures of the charts")] == [2] * 12
    assert page.says("Your weights go by 0.05 kg")


def test_own_layout_names_the_worksheet_of_the_best(tmp_path: Path) -> None:
    log = tmp_path / "my season, a row a fish.xlsx"
    shutil.copy(make.SAMPLES / log.name, log)
    adopt(log)
    confirm(log)
    page = built(log, tmp_path)
    sheet = openpyxl.load_workbook(log)["Fish 2026"]
    names = [cell.value for cell in sheet[1]]
    for row in page.table("The best fish of the season"):
        assert row["Worksheet"] == "Fish 2026"
        typed = dict(zip(names, (cell.value for cell in sheet[int(str(row["Row on it"]))]), strict=True))
        assert typed["Len (in)"] == pytest.approx(row["Length (in)"])
    psd = page.table("Angling PSD,")[0]
    assert (psd["Species"], psd["Which PSD"]) == ("Largemouth bass", "PSD")


@pytest.mark.libreoffice
@pytest.mark.parametrize("case", ["no catch", "no effort", "no fish"])
def test_formulas_of_little_logs_recalculate(case: str, write_log: WriteLog, tmp_path: Path) -> None:
    page = built(write_log(CASES[case]), tmp_path)
    assert not disagreements(page.report, tmp_path)


@pytest.mark.libreoffice
def test_formulas_of_a_season_with_a_psd_recalculate(all_measured: Page, tmp_path: Path) -> None:
    assert not disagreements(all_measured.report, tmp_path)
