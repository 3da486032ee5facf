"""What helps one who types or reads: drop-downs, messages beside a cell, notes on headings."""

import re
from typing import Final

from xlsxwriter.worksheet import Worksheet

from reporter.books.blocks import Choice, Field
from reporter.write.canvas import Canvas
from reporter.write.cells import done
from reporter.write.clean import clean, one_line, units
from reporter.write.limits import LONGEST_HELP_TITLE, LONGEST_LIST
from reporter.write.measure import height_px, lines_needed
from reporter.write.place import TablePlace
from reporter.write.style import FONT, STRAW, size_of

_UNIT = re.compile(r"\s*\([^()]*\)\s*$")
_NOTE_PX: Final = 230
_NOT_LISTED: Final = ("Not in the list", "This is not in the list. Keep it all the same?")


def add_entry_help(canvas: Canvas, place: TablePlace, column: int, field: Field) -> None:
    """Give the cells of a column their drop-downs, and on a sheet to type in the messages beside them."""
    for first, last in place.shared_rows(field.key):
        _add_help(canvas, column, field, first, last)
    for first, last, own in _runs(place.own_fields(field.key)):
        _add_help(canvas, column, own, first, last)


def _runs(own: list[tuple[int, Field]]) -> list[tuple[int, int, Field]]:
    """Return rows that follow each other and have one field as first row, last row, field."""
    runs: list[tuple[int, int, Field]] = []
    for row, field in own:
        if runs and runs[-1][1] == row - 1 and runs[-1][2] == field:
            runs[-1] = (runs[-1][0], row, field)
        else:
            runs.append((row, row, field))
    return runs


def _add_help(canvas: Canvas, column: int, field: Field, first: int, last: int) -> None:
    options: dict[str, object] = {"validate": "any"}
    if field.choice and (field.choice.labels or field.choice.symbol):
        options = _drop_down(canvas, field.choice)
    if field.help and canvas.plan.sheet.bare:
        options |= {"input_title": _title(field), "input_message": clean(field.help)}
    if options == {"validate": "any"}:
        return
    code = canvas.cells.sheet.data_validation(first, column, last, column, options)
    done(code, f"the drop-down or message of {field.key!r}")


def add_heading_note(sheet: Worksheet, row: int, column: int, text: str) -> None:
    """Put a note on a heading, large enough for its text."""
    size = size_of("note")
    options = {
        "width": _NOTE_PX,
        "height": height_px(lines_needed(text, _NOTE_PX, size)) + 8,
        "color": STRAW,
        "font_name": FONT,
        "font_size": size,
    }
    done(sheet.write_comment(row, column, text, options), f"the note on heading {column}")


def _drop_down(canvas: Canvas, choice: Choice) -> dict[str, object]:
    options: dict[str, object] = {"validate": "list", "show_error": choice.strict}
    if choice.strict:
        title, message = _NOT_LISTED
        options |= {"error_type": "warning", "error_title": title, "error_message": message}
    options["source"] = canvas.names.choice_range(choice.symbol) if choice.symbol else _literal(choice.labels)
    return options


def _literal(labels: tuple[str, ...]) -> list[str]:
    """Return labels as a list inside the drop-down, where a comma parts them and quotes are doubled."""
    listed = [one_line(label).replace('"', '""') for label in labels]
    if any("," in label for label in listed) or units(",".join(listed)) > LONGEST_LIST:
        raise ValueError(f"these labels need a column of their own, named by a symbol: {labels}")
    return listed


def _title(field: Field) -> str:
    title = _UNIT.sub("", one_line(field.heading))
    if units(title) > LONGEST_HELP_TITLE:
        raise ValueError(f"a heading with help is longer than {LONGEST_HELP_TITLE} characters: {title!r}")
    return title
