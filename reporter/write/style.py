"""How every workbook looks: type scale, palette, number formats. The only place that knows a colour.

The palette is small and our own. Each colour means one thing and never stands alone: grey rows are also in
italics, a required heading is also bold, a caution also has a frame and its word, a flagged day is also bold
and has its word, the shades of a heat table deepen with the number that each cell prints, chart series also
differ in hatching, dash and marker. Every text has a contrast of 4.5 to 1 or more with what it stands on.
"""

from collections.abc import Collection, Mapping
from typing import Final, Literal

from reporter.books.blocks import Group, Look

Paper = Literal["letter", "a4"]
ChartKind = Literal["bar", "column", "line"]
Properties = Mapping[str, object]

FONT: Final = "Arial"  # on every system, or drawn there by a font of the same widths
BODY_SIZE: Final = 10
LARGE_SIZE: Final = 14

WHITE: Final = "#FFFFFF"
INK: Final = "#1C2529"
LAKE: Final = "#17485A"  # titles, required headings, links
MIST: Final = "#E3ECEF"  # headings
PEBBLE: Final = "#5C676C"  # notes, rows with too little record
HAIR: Final = "#B9C4C8"  # rules
STRAW: Final = "#FFF7DB"  # cells to type in, tips
AMBER: Final = "#8A5200"  # cautions
DUSK: Final = "#463C63"  # days behind a front

Role = Literal[
    "title",
    "lead",
    "heading",
    "body",
    "note",
    "caution",
    "caution word",
    "label",
    "head left",
    "head inset",
    "head right",
    "large head left",
    "large head inset",
    "large head right",
    "required",
    "optional",
]

_WRAP: Properties = {"text_wrap": True, "valign": "top"}
_FRAME: Properties = {"border": 1, "border_color": HAIR}
_HEAD: Properties = {
    "font_color": INK,
    "bold": True,
    "bg_color": MIST,
    "bottom": 2,
    "bottom_color": LAKE,
    "text_wrap": True,
    "valign": "bottom",
}

ROLES: Final[Mapping[Role, Properties]] = {
    "title": {"font_size": 18, "bold": True, "font_color": LAKE, "valign": "vcenter"},
    "lead": {"font_size": 12, "font_color": INK, "valign": "top"},
    "heading": {"font_size": 12, "bold": True, "font_color": LAKE, "valign": "bottom"},
    "body": {"font_color": INK, "valign": "top"},
    "note": {"font_size": 9, "font_color": PEBBLE, "valign": "top"},
    "caution": {
        "font_color": INK,
        "bg_color": WHITE,
        "border": 2,
        "border_color": AMBER,
        "valign": "vcenter",
    },
    "caution word": {"font_color": AMBER, "bold": True},
    "label": {"font_color": INK, "valign": "top"},
    "head left": {**_HEAD, "align": "left"},
    "head inset": {**_HEAD, "align": "left", "indent": 1},
    "head right": {**_HEAD, "align": "right"},
    "large head left": {**_HEAD, "align": "left", "font_size": LARGE_SIZE},
    "large head inset": {**_HEAD, "align": "left", "indent": 1, "font_size": LARGE_SIZE},
    "large head right": {**_HEAD, "align": "right", "font_size": LARGE_SIZE},
    "required": {"font_color": WHITE, "bold": True, "bg_color": LAKE, **_FRAME, **_WRAP},
    "optional": {"font_color": INK, "bg_color": MIST, **_FRAME, **_WRAP},
}

Trait = Literal[
    "heat 1",
    "heat 2",
    "heat 3",
    "heat 4",
    "heat 5",
    "grey",
    "flagged",
    "ruled",
    "entry",
    "total",
    "wrap",
    "large",
    "hair",
    "strong",
    "inset",
    "left",
    "link",
]

# One hue from light to dark: the order shows in black and white too.
_HEAT: Final = ("#F4F8F9", "#DDEAEE", "#BFD8DF", "#9CC3CE", "#78ACBB")
HEAT_TRAITS: Final[tuple[Trait, ...]] = ("heat 1", "heat 2", "heat 3", "heat 4", "heat 5")

LINKED: Final[Properties] = {"font_color": LAKE, "underline": 1}

_TRAITS: Final[Mapping[Trait, Properties]] = {
    "link": LINKED,  # first: on a dark ground another colour shows better
    "hair": {"bottom": 1, "bottom_color": HAIR},
    "ruled": {"border": 1, "border_color": PEBBLE, "valign": "vcenter"},
    "entry": {"bg_color": STRAW, "border": 1, "border_color": PEBBLE},
    "grey": {"font_color": PEBBLE, "italic": True},
    **{
        trait: {"font_color": INK, "bg_color": shade} for trait, shade in zip(HEAT_TRAITS, _HEAT, strict=True)
    },
    "flagged": {"font_color": WHITE, "bg_color": DUSK, "bold": True},
    "total": {"bold": True, "top": 1, "top_color": INK},
    "wrap": {"text_wrap": True},
    "large": {"font_size": LARGE_SIZE, "valign": "vcenter"},
    "strong": {"bold": True},
    "inset": {"indent": 1},
    "left": {"align": "left"},
}

_NUMBERS: Final[Mapping[Look, str]] = {
    "whole": "#,##0",
    "plain": "0",
    "one": "#,##0.0",
    "two": "#,##0.00",
    "three": "#,##0.000",
    "share": "0%",
    "hours": "#,##0.0",
}
_DATES: Final[Mapping[Paper, str]] = {"a4": "ddd d mmm yyyy", "letter": "ddd mmm d, yyyy"}
_SHORT_DATES: Final[Mapping[Paper, str]] = {"a4": "d mmm", "letter": "mmm d"}
_TIMES: Final[Mapping[Paper, str]] = {"a4": "hh:mm", "letter": "h:mm AM/PM"}
_LEFT: Final = frozenset({"text", "wrapped", "typed"})

TABS: Final[Mapping[Group, str]] = {"me": LAKE, "books": AMBER, "behind": PEBBLE, "log": "#4F7A3A"}

# Each with a hatching, a dash and a marker of its own: they differ in black and white too.
SERIES: Final = ("#3B83A8", "#8C3A12", "#17485A", "#A38A10", "#7A4E86", "#5F7F4C")
_HATCHINGS = (
    "",
    "wide_upward_diagonal",
    "dotted_grid",
    "wide_downward_diagonal",
    "dark_horizontal",
    "small_check",
)
_DASHES = ("solid", "dash", "round_dot", "long_dash", "dash_dot", "square_dot")
_MOST_MARKERS = 60
_MARKERS = ("circle", "square", "diamond", "triangle", "x", "plus")

CHART_TITLE: Final[Properties] = {"name": FONT, "size": 12, "bold": True, "color": LAKE}
CHART_TEXT: Final[Properties] = {"name": FONT, "size": 9, "bold": False, "color": INK}
GRID_LINE: Final[Properties] = {"color": HAIR, "width": 0.5}


def leans_left(look: Look) -> bool:
    """Say whether cells of this look stand on the left."""
    return look in _LEFT


def number_format(look: Look, paper: Paper) -> str:
    """Return the number format of a look; dates and times are as the country of the paper writes them."""
    if look == "date":
        return _DATES[paper]
    if look == "time":
        return _TIMES[paper]
    return "@" if look == "typed" else _NUMBERS.get(look, "General")


def size_of(role: Role) -> float:
    """Return the type size of a role, in points."""
    return float(str(ROLES[role].get("font_size", BODY_SIZE)))


def is_bold(role: Role) -> bool:
    """Say whether text in a role is bold."""
    return bool(ROLES[role].get("bold"))


def cell_properties(look: Look, paper: Paper, traits: Collection[Trait] = ()) -> dict[str, object]:
    """Return what a cell of a table looks like, as xlsxwriter names it."""
    properties: dict[str, object] = {
        "font_color": INK,
        "valign": "top",
        "align": "left" if leans_left(look) else "right",
        "num_format": number_format(look, paper),
    }
    for trait, more in _TRAITS.items():
        if trait in traits:
            properties.update(more)
    if look == "wrapped":
        properties["text_wrap"] = True
    return properties


def axis_format(look: Look, paper: Paper) -> str:
    """Return the number format of a chart's axis, where a day is short."""
    return _SHORT_DATES[paper] if look == "date" else number_format(look, paper)


def series_style(kind: ChartKind, number: int, *, points: int = 0) -> dict[str, object]:
    """Return how the series of a chart with this number (from 0) looks, as xlsxwriter names it.

    points: how many it has; a line of many has no markers.
    """
    number %= len(SERIES)
    colour = SERIES[number]
    if kind == "line":
        if points > _MOST_MARKERS:
            return {"line": {"color": colour, "width": 1.5, "dash_type": _DASHES[number]}}
        marker = {"type": _MARKERS[number], "size": 5, "fill": {"color": colour}, "border": {"color": colour}}
        return {"line": {"color": colour, "width": 2, "dash_type": _DASHES[number]}, "marker": marker}
    bars: dict[str, object] = {"border": {"color": colour}, "gap": 60}
    if _HATCHINGS[number]:
        hatching = {"pattern": _HATCHINGS[number], "fg_color": colour, "bg_color": WHITE}
        return {**bars, "pattern": hatching}
    return {**bars, "fill": {"color": colour}}


def flag_style() -> dict[str, object]:
    """Return how single marks of flagged days look on a line chart."""
    marker = {"type": "diamond", "size": 7, "fill": {"color": DUSK}, "border": {"color": WHITE}}
    return {"line": {"none": True}, "marker": marker}


def error_line() -> dict[str, object]:
    """Return the line of error bars, which shows on the bars and beside them."""
    return {"color": INK, "width": 1.25}
