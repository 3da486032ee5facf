"""Random rows of Effort and Catch for one trip, with every slip that the rules of the rows speak of."""

import datetime as dt

from tests.reference.careless import Writer
from tests.reference.log import Cell, Row, Unread

FISH = (
    "largemouth bass",
    "largemouth bass",
    "smallmouth bass",
    "spotted bass",
    "bass",
    "walleye",
    "bluegill",
)


def stints(writer: Writer, hours: float, rods: int) -> list[Row]:
    """Return rows of Effort with their timing: by minutes, clock or parts, or by several."""
    rng = writer.rng
    names = [rng.choice(writer.techniques) for _ in range(rng.randint(1, 4))]
    way = rng.choice(
        ["minutes", "clock", "parts", "parts", "timed", "mixed" if writer.slip(0.6) else "parts"]
    )
    ways = {"timed": ("minutes", "clock"), "mixed": ("minutes", "clock", "parts")}.get(way, (way,))
    scale = rng.choice([0.3, 1.2, 2.0]) if writer.slip(0.3) else 1.0
    clock = dt.datetime(2026, 4, 1, rng.choice([6, 6, 22]))
    rows: list[Row] = []
    for name in names:
        on_it = rng.choice([None, 1, rods])
        share = min(2800, max(10, int(60 * hours * rods / len(names) / (on_it or 1) * scale) // 5 * 5))
        row: Row = {"technique": writer.spelled(name), "rods": writer.spoiled(on_it or None, "both", -2)}
        chosen = rng.choice(ways)
        if chosen == "minutes" or writer.slip(0.08):
            row["minutes"] = writer.spoiled(share, "a while", 5000)
        if chosen == "clock" or writer.slip(0.05):
            row["start"], row["end"], clock = _clock(writer, clock, share)
        if chosen == "parts" or writer.slip(0.08):
            row["parts"] = writer.spoiled(rng.choice([1, 2, 3, 6, 0.5]), "some")
        rows.append(row)
    return rows


def _clock(writer: Writer, clock: dt.datetime, minutes: int) -> tuple[Cell, Cell, dt.datetime]:
    """Return a stint's start and end, and when the next one starts; rarely a clock that cannot be."""
    end = clock + dt.timedelta(minutes=min(minutes, 700))
    if writer.slip(0.06):
        return clock.time(), writer.rng.choice([None, clock.time(), Unread("late")]), end
    return clock.time(), end.time(), end


def write_stints(writer: Writer, stints: list[Row], luck: float, pointer: Cell) -> list[tuple[str, int]]:
    """Write the stints; returns what each technique really landed."""
    rng = writer.rng
    tallies = rng.choice(["all", "all", "some", "none"])
    landed = []
    for place, row in enumerate(stints):
        fish = sum(rng.random() < luck / 3 for _ in range(9)) if luck and rng.random() < 0.7 else 0
        landed.append((str(row["technique"]), fish))
        if tallies == "all" or (tallies == "some" and writer.chance(0.5)):
            row["landed"] = writer.spoiled(fish, "lots", 2.5, -1)
        if writer.chance(0.6):
            row["missed"] = writer.spoiled(rng.randint(0, 3) if luck else 0, "plenty")
        if place == 0 or writer.chance(0.4):
            row["trip"] = pointer
        if writer.slip(0.03):
            row["technique"] = None
        writer.lines(writer.effort)
        writer.effort.append(row)
    return landed


def write_fish(writer: Writer, landed: list[tuple[str, int]], luck: float, pointer: Cell) -> None:
    """Write rows of Catch: some fish, all of them, or more than were tallied."""
    rng = writer.rng
    habit = rng.choice(["few", "all", "more", "nothing"])
    rows: list[Row] = []
    for technique, fish in landed if luck and habit != "nothing" else []:
        share = fish // 2 if habit == "few" else fish + (habit == "more") * rng.randint(0, 2)
        while share > 0:
            count = rng.randint(1, share)
            share -= count
            rows.append(_fish_row(writer, None if writer.chance(0.12) else technique, count))
    if luck and writer.slip(0.15):
        rows.append(_fish_row(writer, writer.spelled(rng.choice([*writer.techniques, "Topwater"])), 1))
    if luck and writer.slip(0.1):
        rows.append(_fish_row(writer, None, rng.randint(1, 3)))
    if not rows and writer.chance(0.3):
        rows.append({"species": "none"})
    for place, row in enumerate(rows):
        if place == 0 or writer.chance(0.3):
            row["trip"] = pointer
        writer.lines(writer.catch)
        writer.catch.append(row)


def _fish_row(writer: Writer, technique: str | None, count: int) -> Row:
    rng = writer.rng
    species: Cell = rng.choice(FISH)
    return {
        "technique": technique,
        "species": Unread("mystery fish") if writer.slip(0.04) else species,
        "count": writer.spoiled(count if count > 1 else None, "several", 1.5),
        "fate": writer.spoiled(rng.choice([None, None, "released", "kept"]), "eaten?"),
    }


def write_strays(writer: Writer) -> None:
    """Rows that point at no trip: the first without one, and a number that is nowhere."""
    rng = writer.rng
    if writer.slip(0.15):
        writer.effort.insert(0, {"technique": "Jerkbait", "minutes": 60, "landed": 2})
    if writer.slip(0.15):
        writer.catch.insert(0, {"species": "largemouth bass", "count": 2})
    effort: Row = {"technique": "Jerkbait", "minutes": 30}
    catch: Row = {"species": "bass"}
    for rows, row in ((writer.effort, effort), (writer.catch, catch)):
        if writer.slip(0.3):
            nowhere: list[Cell] = ["T-999", dt.date(2026, 1, 1)]
            rows += [row | {"trip": rng.choice(nowhere)}, dict(row)]
