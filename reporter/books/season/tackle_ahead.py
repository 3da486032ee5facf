"""The two cells of Tackle that say what next season is reckoned with, and what follows from them."""

from collections.abc import Sequence

from reporter.books.blocks import Block, Cell, Choice, Field, Figure, Figures, Live, Table

BLANK_IS_NONE = "{reckoned.none}=1"
"""The condition that blanks are read as none lost."""

_NO, _YES = "no", "yes"
_HOURS = "INDEX({ahead.value},1)"
_SEASON = "SUM({used_technique.rod_hours})"
_NOTE = (
    "Rod-hours: this season's, until you type others. Read a blank as none lost: no counts only the stints "
    "whose Lures lost is filled in, 0 too; yes counts every stint, a blank as none lost, which is right if "
    "you write losses only. What to have follows at once."
)


def ahead_blocks(hours: float) -> tuple[Block, ...]:
    """Return the cells to type in and what is reckoned with. hours: this season's rod-hours."""
    return _entries(hours), _reckoned(hours)


def _entries(hours: float) -> Table:
    own = {
        0: {"value": Field("value", "", "one", entry=True)},
        1: {"value": Field("value", "", "typed", choice=Choice(labels=(_NO, _YES)))},
    }
    columns: dict[str, Sequence[Cell]] = {
        "no": [1, 2],
        "what": ["Rod-hours next season", "Read a blank as none lost"],
        "value": [Live(_SEASON, hours), _NO],
    }
    fields = (
        Field("no", "No.", "plain"),
        Field("what", "Type at the right"),
        Field("value", "Yours", "typed", width=14.0),
    )
    return Table("ahead", fields, columns, note=_NOTE, own_fields=own)


def _reckoned(hours: float) -> Figures:
    """Return what is reckoned with, whatever was typed."""
    typed = f"IF(ISNUMBER({_HOURS}),MAX(0,{_HOURS}),{_SEASON})"
    none = f'IF(LOWER(TRIM(INDEX({{ahead.value}},2)))="{_YES}",1,0)'
    return Figures(
        "reckoned",
        (
            Figure(
                "hours", "Rod-hours reckoned with", Live(typed, hours), "one", "This season's if no number."
            ),
            Figure("times", "Times this season's", Live(f"{{reckoned.hours}}/{_SEASON}", 1.0), "two"),
            Figure("none", "Blanks read as none lost", Live(none, 0), "plain", "1: yes. 0: no."),
        ),
    )
