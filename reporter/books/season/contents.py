"""Finding one's way: the sheet Contents, and a line on every sheet that leads to it."""

from collections.abc import Mapping, Sequence
from dataclasses import replace
from typing import Final

from reporter.books.blocks import Block, Figure, Figures, Group, Line, Sheet, Table, Text
from reporter.books.season.water_cards import NAME as CARDS

_GROUPS: Final[Mapping[Group, str]] = {
    "me": "For me",
    "books": "For the books",
    "behind": "Behind the numbers",
}
NAME: Final = "Contents"
_LEAD = "What is underlined leads there; the title of a table leads to the rows behind it."
ANSWERS: Final[Mapping[str, str]] = {
    "At a glance": "The season on one page",
    "Techniques": "What each technique gave, and how sure that is",
    "Side by side": "Techniques compared fairly: on the same trips, on days of the same kind",
    "What worked": "Choose a day like the one ahead; see what worked on days like it",
    "Conditions": "Fish per rod-hour by water temperature, clarity, light, wind, cover and more",
    "Front days": "Which days lay behind a front, and whether you saw it the same way",
    "Front days by date": "The evidence for each date",
    "What the days did": "Fish per rod-hour on each type of day",
    "Hunches": "Your rules of thumb, held against your record",
    "Fish": "Species, sizes, the ten best",
    "Tackle": "Hang-ups, lures lost, bites missed, and what to have next season",
    "Waters": "What each water gave, month by month",
    "Water cards": "A card a water: what paid there, and when",
    "Weeks": "The season week by week",
    "Trips": "One line a trip",
    "Seasons": "Season against season: what each gave, techniques gained and lost, what can be said",
    "Paperwork": "What you owe, what runs out, what is left; kept fish against your rules",
    "Rows to fix": "Rows of your log to mend, the most rewarding first",
    "How it is worked out": "Every formula and its source; where every row and every fish went",
    "Worked through": "A rate, its range and a comparison, step by step on your own rows",
    "Behind Techniques": "How rates with little record are drawn towards the rate of all",
    "Behind Side by side": "What is compared with what, over which mix of days, in the same hours",
    "Side by side by kind of day": "The kinds of day on which its comparisons stand",
    "Side by side trip by trip": "The trips on which its comparisons stand",
    "Behind Hunches": "What each side of a hunch had",
    "Hunches trip by trip": "The trips on which a hunch stands",
    "Behind Seasons": "The like days on which season against season stands",
    "Seasons trip by trip": "The trips on which season against season stands",
    "Condition rates": "The rates behind Conditions",
    "Behind What worked": "The lists that What worked chooses from",
    "Behind Paperwork": "The trips and days behind each count on Paperwork",
    "Stint conditions": "What every stint was fished under",
    "Stints": "One row a stint, as on Effort",
    "Trip techniques": "One row a technique on a trip: every rate stands on these",
    "Fish rows": "One row a row of Catch",
}
"""What each sheet is for, in the words of the contents list."""


_BEHIND: Final[Mapping[str, str]] = {
    "Techniques": "Trip techniques",
    "Side by side": "Behind Side by side",
    "Behind Techniques": "Trip techniques",
    "Behind Side by side": "Trip techniques",
    "What worked": "Behind What worked",
    "Conditions": "Condition rates",
    "Front days": "Front days by date",
    "What the days did": "Trip techniques",
    "Hunches": "Behind Hunches",
    "Fish": "Fish rows",
    "Tackle": "Stints",
    "Waters": "Trip techniques",
    "Weeks": "Trip techniques",
    "Seasons": "Behind Seasons",
    "Behind Hunches": "Hunches trip by trip",
}
"""Sheet -> the sheet with the rows behind its tables."""


def navigable(sheets: Sequence[Sheet]) -> tuple[Sheet, ...]:
    """Return the sheets with the contents list behind the first, and on each a line that leads to it.

    The titles of tables lead to the rows behind them.
    """
    first, *others = (_with_rows_behind(_with_way_back(sheet)) for sheet in sheets)
    return (first, _contents_sheet(sheets), *others)


def _contents_sheet(sheets: Sequence[Sheet]) -> Sheet:
    lists = [_contents(group, title, sheets) for group, title in _GROUPS.items()]
    head = Text((Line(NAME, "title"), Line(_LEAD, "lead")))
    return Sheet(NAME, (head, *lists), group="me", pages_tall=1)


def _contents(group: Group, title: str, sheets: Sequence[Sheet]) -> Figures:
    names = [sheet.name for sheet in sheets if sheet.group == group]
    items = tuple(Figure(_key(name), name, "", remark=ANSWERS[name], sheet=name) for name in names)
    return Figures(f"contents_{group}", items, title=title)


def _key(name: str) -> str:
    return name.lower().replace(" ", "_")


def _with_way_back(sheet: Sheet) -> Sheet:
    """Add a line that leads to the contents list: under the title, or last on pages that are cut apart."""
    head, *rest = sheet.blocks
    if not isinstance(head, Text):
        raise TypeError(f"the sheet {sheet.name!r} does not begin with its title")
    back = Line("To the contents", "note", NAME)
    if sheet.name == CARDS:
        return replace(sheet, blocks=(*sheet.blocks, Text((back,))))
    title, *lines = head.lines
    blocks: tuple[Block, ...] = (replace(head, lines=(title, back, *lines)), *rest)
    return replace(sheet, blocks=blocks)


def _with_rows_behind(sheet: Sheet) -> Sheet:
    behind = _BEHIND.get(sheet.name, "")
    if not behind:
        return sheet
    blocks = tuple(
        replace(block, behind=behind) if isinstance(block, Table) and block.title else block
        for block in sheet.blocks
    )
    return replace(sheet, blocks=blocks)
