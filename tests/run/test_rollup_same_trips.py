"""A trip that stands in two logs of a guide is counted once, however the logs come and go."""

import datetime as dt
from pathlib import Path

import openpyxl

from reporter.run.rollup import RolledUp
from tests.rollup_logs import WATERS, Day, GuideLog, save_all
from tests.run.rolled import contents, rolled, table

SAID = (
    "Trip T-001 of 2026-06-01 stands in log {}, {}, too; is one a copy of the other? "
    "Keep each trip in one log."
)


def guides(folder: Path) -> Path:
    """Three guides with two trips each on the same days: G0 in log 01, and so on."""
    days = [Day(dt.date(2026, 6, day), "Lake Arden", fish=(("walleye", 2, "kept"),)) for day in (1, 2)]
    save_all([GuideLog(f"G{number}", days, WATERS) for number in range(3)], folder)
    return folder


def saved_again(log: Path, target: Path) -> None:
    """The same season in other bytes."""
    book = openpyxl.load_workbook(log)
    book["Season"]["D1"] = "x"
    book.save(target)


def held(done: RolledUp) -> list[tuple[str, str, tuple[str, ...]]]:
    return [(log.file, log.state, log.sentences) for log in done.made.missed]


def trips(out: Path) -> str:
    return table(out / "tables", "rollup_effort")[0]["trips"]


def test_season_that_was_saved_again_is_counted_once_and_named(tmp_path: Path) -> None:
    folder = guides(tmp_path / "logs")
    saved_again(folder / "log 01.xlsx", folder / "log 01 (1).xlsx")
    for read in (3, 0):
        done = rolled(folder, tmp_path / "out")
        assert (done.read, done.kept) == (read, 3 - read)
        said = SAID.format(1, "log 01 (1).xlsx")  # a blank stands before a dot
        assert held(done) == [("log 01.xlsx", "has trips of another", (said,))]
        assert done.made.missed[0].lacking
        assert trips(tmp_path / "out") == "6"


def test_guides_who_wrote_the_same_of_a_day_are_no_copies(tmp_path: Path) -> None:
    """Two boats of a party: each of the three logs says the same of both days."""
    assert rolled(guides(tmp_path / "logs"), tmp_path / "out").made.missed == ()
    assert trips(tmp_path / "out") == "6"


def test_copy_that_does_not_say_whose_it_is_is_held_back(tmp_path: Path) -> None:
    folder = guides(tmp_path / "logs")
    book = openpyxl.load_workbook(folder / "log 02.xlsx")
    (code,) = (row[1] for row in book["Season"].iter_rows() if row[0].value == "Guide code")
    code.value = None
    book.save(folder / "log 04.xlsx")
    assert [log.file for log in rolled(folder, tmp_path / "out").made.missed] == ["log 04.xlsx"]


def test_one_trip_in_both_is_enough_and_one_fish_more_makes_another_trip(tmp_path: Path) -> None:
    folder = guides(tmp_path / "logs")
    more = Day(dt.date(2026, 6, 1), "Lake Arden", fish=(("walleye", 3, "kept"),))
    other = Day(dt.date(2026, 7, 1), "Lake Arden")
    GuideLog("G0", [more, other], WATERS).save(folder / "log 04.xlsx")
    assert rolled(folder, tmp_path / "out").made.missed == ()
    GuideLog("G0", [Day(dt.date(2026, 6, 9), "Lake Arden"), other, other], WATERS).save(
        folder / "log 05.xlsx"
    )
    (missed,) = rolled(folder, tmp_path / "out").made.missed
    assert missed.file == "log 05.xlsx"
    assert missed.sentences[0].startswith("Trip T-002 of 2026-07-01 stands in log 4, log 04.xlsx, too;")


def test_log_that_is_held_back_holds_no_other_back(tmp_path: Path) -> None:
    """b has a trip of a, c one of b alone: c is counted. The trips: a 1, 2; b 2, 3; c 3, 4."""
    folder = tmp_path / "logs"
    days = {number: Day(dt.date(2026, 6, number), "Lake Arden") for number in (1, 2, 3, 4)}
    folder.mkdir()
    for name, numbers in (("a", (1, 2)), ("b", (3, 2)), ("c", (3, 4))):
        GuideLog("G0", [days[number] for number in numbers], WATERS).save(folder / f"{name}.xlsx")
    done = rolled(folder, tmp_path / "out")
    assert [log.file for log in done.made.missed] == ["b.xlsx"]
    (row,) = table(tmp_path / "out" / "tables", "guide_effort")
    assert (row["guide"], row["logs"], row["trips"]) == ("G0", "2", "4")


def test_exact_copy_of_a_log_that_is_held_back_is_not_said_to_be_counted(tmp_path: Path) -> None:
    folder = guides(tmp_path / "logs")
    saved_again(folder / "log 01.xlsx", folder / "log 08.xlsx")
    (folder / "log 09.xlsx").write_bytes((folder / "log 08.xlsx").read_bytes())
    done = rolled(folder, tmp_path / "out")
    assert held(done) == [
        ("log 08.xlsx", "has trips of another", (SAID.format(1, "log 01.xlsx"),)),
        (
            "log 09.xlsx",
            "there twice",
            ("Log 4, log 08.xlsx, is the same; that one is not counted either, see there.",),
        ),
    ]


def test_logs_added_taken_away_and_renamed_give_what_a_run_from_scratch_gives(
    tmp_path: Path, reads: list[str]
) -> None:
    folder, out = guides(tmp_path / "logs"), tmp_path / "out"
    first, copy = folder / "log 01.xlsx", folder / "zz copy.xlsx"

    def as_from_scratch(step: str) -> list[str]:
        done = rolled(folder, out)
        rolled(folder, tmp_path / step)
        assert contents(out) == contents(tmp_path / step), step
        assert trips(out) == "6", step
        return [log.file for log in done.made.missed]

    assert as_from_scratch("alone") == []
    saved_again(first, copy)
    assert as_from_scratch("added") == ["zz copy.xlsx"]
    first.rename(folder / "zzz.xlsx")
    assert as_from_scratch("renamed") == ["zzz.xlsx"]
    copy.unlink()
    assert as_from_scratch("taken away") == []
    (folder / "zzz.xlsx").rename(first)
    assert as_from_scratch("named as before") == []


def test_store_says_nothing_of_a_trip_but_whether_another_log_holds_it(tmp_path: Path) -> None:
    folder = guides(tmp_path / "logs")
    rolled(folder, tmp_path / "out")
    store = (tmp_path / "out" / "roll rollup.sqlite").read_bytes()
    assert b"Lake Arden" in store  # shared by name, and in the sums
    for word in (b"T-001", b"2026-06-01"):
        assert word not in store
