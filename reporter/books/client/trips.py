"""His trips: a line each, then each in words."""

from collections.abc import Sequence

from reporter.books.blocks import Block, Cell, Field, Line, Sheet, Table, Text
from reporter.books.client.day import day_lines
from reporter.books.client.letter import Letter
from reporter.books.client.words import hours_words
from reporter.books.words import day_words
from reporter.compute.clients.figures import count
from reporter.compute.clients.model import Client, Day


def trips(client: Client, letter: Letter) -> Sheet:
    """Return the sheet of his trips; of a single one the first page tells all."""
    blocks: list[Block] = [Text((Line("Your trips", "title"),)), _table(client.days)]
    blocks += [_day(day, letter) for day in client.days]
    return Sheet("Your trips", tuple(blocks), group="me")


def _table(days: Sequence[Day]) -> Table:
    """Return a line a trip. His own column holds no 0: whose a fish without a name is, nobody wrote."""
    fields = [
        Field("date", "Date", "date"),
        Field("water", "Water", width=30.0),
        Field("hours", "Hours", "hours"),
    ]
    columns: dict[str, Sequence[Cell]] = {
        "date": [day.date for day in days],
        "water": [day.water or None for day in days],
        "hours": [day.hours for day in days],
    }
    total: dict[str, Cell] = {"date": "All", "hours": sum(day.hours for day in days)}
    own, party = [count(day.own) for day in days], [count(day.party) for day in days]
    if any(own) and any(party):
        for key, heading, fish in (("own", "Yours", own), ("party", "Your party's", party)):
            fields.append(Field(key, heading, "whole", width=11.0))
            columns[key] = [number or None for number in fish]
            total[key] = sum(fish)
    heading = "Your party's fish" if any(party) and not any(own) else "Fish landed"
    fields.append(Field("fish", heading, "whole", width=11.0))
    columns["fish"] = [count(day.caught) for day in days]
    total["fish"] = sum(own) + sum(party)
    return Table("day", tuple(fields), columns, total=total)


def _day(day: Day, letter: Letter) -> Text:
    where = f", {day.water}" if day.water else ""
    heading = f"{day_words(day.date, letter.system)}{where}, {hours_words(day.hours)}"
    return Text((Line(heading, "heading"), *(Line(said) for said in day_lines(day, letter))))
