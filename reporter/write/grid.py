"""Draws tables: title, heading row, body, total line, note, what a filter shows, drop-downs and notes."""

from collections.abc import Sequence

from xlsxwriter.utility import xl_range_abs

from reporter.books.blocks import Cell, Field, Live
from reporter.write.canvas import Canvas
from reporter.write.cells import done
from reporter.write.clean import clean
from reporter.write.columns import Column, shades, write_column
from reporter.write.entry import add_entry_help, add_heading_note
from reporter.write.layout import counted
from reporter.write.measure import FILTER_BUTTON_PX, INDENT_PX, height_px, lines_needed
from reporter.write.place import TablePlace
from reporter.write.style import LARGE_SIZE, Role, Trait, leans_left, size_of

_TOTAL: frozenset[Trait] = frozenset({"total"})
_ENTRY_LOOKS = frozenset({"typed", "number"})
_MAY_BE_TEXT = frozenset({str, Live})
_LEFT: frozenset[Trait] = frozenset({"left"})  # values of many kinds in one column line up on the left
_LEFT_HEADS: dict[bool, tuple[Role, Role]] = {
    False: ("head left", "head inset"),
    True: ("large head left", "large head inset"),
}
_LONG = 2_000  # rows from which blank cells are not written just for the line below them
_GAP_PX = 6
_PENCIL_PX = 28
_WIDEST_LETTER_PX = 14


def draw_table(canvas: Canvas, place: TablePlace) -> None:
    """Draw a table with all its parts in their places."""
    if place.title is not None:
        canvas.prose(place.title, place.table.title, "heading", sheet=place.table.behind)
    if place.shown is not None:
        _draw_rows_shown(canvas, place, place.shown)
    for column, field in enumerate(place.table.fields):
        _draw_heading(canvas, place, column, field)
        _draw_column(canvas, place, column, field)
        add_entry_help(canvas, place, column, field)
    if place.total is not None:
        _draw_total(canvas, place, place.total)
    if place.note is not None:
        # A first column that every page repeats would repeat a piece of the note.
        first = 1 if canvas.plan.sheet.pages_wide > 1 else 0
        canvas.prose(place.note, place.table.note, "note", first)
    if place.table.filtered:
        last = len(place.table.fields) - 1
        done(canvas.cells.sheet.autofilter(place.heading, 0, place.last, last), "filter")


def _draw_rows_shown(canvas: Canvas, place: TablePlace, row: int) -> None:
    column = counted(place.table)
    if column is None:
        return
    cells = xl_range_abs(place.first, column, place.last, column)
    rows = place.table.rows
    live = Live(f'"Rows shown: "&SUBTOTAL(103,{cells})&" of {rows}"', f"Rows shown: {rows} of {rows}")
    canvas.cells.put(row, 0, live, canvas.cells.formats.role("note"))


def _draw_heading(canvas: Canvas, place: TablePlace, column: int, field: Field) -> None:
    bare = canvas.plan.sheet.bare
    role: Role = "large head right" if place.table.large else "head right"
    if leans_left(field.look):
        role = _LEFT_HEADS[place.table.large][column > 0]
    if bare:
        role = "required" if field.required else "optional"
    heading = clean(field.heading)
    canvas.cells.text(place.heading, column, heading, canvas.cells.formats.role(role))
    taken = FILTER_BUTTON_PX if place.table.filtered else INDENT_PX if role == "head inset" else 0
    room = canvas.plan.px(column, column) - taken
    size = size_of(role)
    lines = lines_needed(heading, room, size, bold=role != "optional")
    canvas.tall(place.heading, height_px(lines, size) + 2)
    if field.help and not bare:
        add_heading_note(canvas.cells.sheet, place.heading, column, clean(field.help))


def _draw_column(canvas: Canvas, place: TablePlace, column: int, field: Field) -> None:
    table, bare = place.table, canvas.plan.sheet.bare
    cells = table.columns.get(field.key, ())
    traits = _traits(place, column, field, bare=bare)
    if _set_wrapped_heights(canvas, place.first, column, cells):
        traits |= {"wrap"}
    boxed = bool(traits & {"ruled", "entry"})
    fill = boxed or not (bare or table.rows > _LONG)
    shaded = shades(table.grey, table.flagged.get(field.key, ()), table.heat.get(field.key, ()))
    write_column(canvas.cells, Column(place, column, cells, field.look, traits, shaded, fill))
    for row, own in place.own_fields(field.key):
        form = canvas.cells.formats.cell(own.look, _traits(place, column, own, bare=bare) | traits | _LEFT)
        canvas.cells.put(row, column, cells[row - place.first], form, place)
    for row, link in enumerate(table.links.get(field.key, ()), place.first):
        if link is not None:
            form = canvas.cells.formats.cell(field.look, traits | {"link"})
            canvas.cells.link(row, column, str(cells[row - place.first]), link, form)
    if table.large:
        for row in range(place.first, place.last + 1):
            canvas.tall(row, height_px(1, LARGE_SIZE))
    if boxed or not bare:
        _draw_blanks(canvas, place, column, len(cells), field, traits)


def _draw_blanks(
    canvas: Canvas, place: TablePlace, column: int, filled: int, field: Field, traits: frozenset[Trait]
) -> None:
    """Draw the cells to type in or to pencil in, or the one blank row of an empty table."""
    form = canvas.cells.formats.cell(field.look, traits)
    for row in range(place.first + filled, place.last + 1):
        canvas.cells.put(row, column, None, form)
    if place.table.ruled:
        for row in range(place.first, place.last + 1):
            canvas.tall(row, _PENCIL_PX)


def _draw_total(canvas: Canvas, place: TablePlace, row: int) -> None:
    for column, field in enumerate(place.table.fields):
        traits: frozenset[Trait] = _traits(place, column, field, bare=False) - {"hair", "entry"} | _TOTAL
        cell = place.table.total.get(field.key)
        canvas.cells.put(row, column, cell, canvas.cells.formats.cell(field.look, traits), place)
    if row > place.last + 1:
        canvas.tall(place.last + 1, _GAP_PX)


def _traits(place: TablePlace, column: int, field: Field, *, bare: bool) -> frozenset[Trait]:
    if place.table.ruled:
        return frozenset({"ruled"})
    if place.table.large:
        return frozenset(
            {"hair", "large", "inset"} if column and leans_left(field.look) else {"hair", "large"}
        )
    if bare:
        return frozenset()
    to_type_in = field.entry or field.choice or field.look in _ENTRY_LOOKS
    kind: Trait = "entry" if to_type_in else "hair"
    # Text keeps clear of a number that stands to its left.
    return frozenset({kind, "inset"} if column and leans_left(field.look) else {kind})


def _set_wrapped_heights(canvas: Canvas, first: int, column: int, cells: Sequence[Cell]) -> bool:
    """Make room for every text that its column is too narrow for; say whether there was one."""
    if not {cell.__class__ for cell in cells} & _MAY_BE_TEXT:
        return False
    room = canvas.plan.px(column, column) - INDENT_PX
    surely = room // _WIDEST_LETTER_PX
    shown = [cell.value if isinstance(cell, Live) else cell for cell in cells]
    texts = {text for text in shown if isinstance(text, str)}  # columns repeat their words
    long = (text for text in texts if len(text) > surely or "\n" in text)
    heights = {text: height_px(lines) for text in long if (lines := lines_needed(clean(text), room)) > 1}
    if heights:
        for row, text in enumerate(shown, first):
            if isinstance(text, str) and text in heights:
                canvas.tall(row, heights[text])
    return bool(heights)
