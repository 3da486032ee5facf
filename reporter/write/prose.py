"""Draws lines of text and lists of figures."""

from reporter.books.blocks import Figure, Line
from reporter.write.canvas import Canvas
from reporter.write.clean import clean
from reporter.write.measure import PADDING_PX, height_px, lines_needed, text_px
from reporter.write.place import FiguresPlace, TextPlace
from reporter.write.style import LARGE_SIZE, Trait, leans_left, size_of
from reporter.write.values import given

_CAUTION = "Caution:"
_ABOVE_HEADING_PX = 8


def draw_text(canvas: Canvas, place: TextPlace) -> None:
    """Draw lines of text, each in its style over the width of the page."""
    for row, line in enumerate(place.text.lines, place.top):
        if line.style == "caution":
            _draw_caution(canvas, row, line)
        else:
            canvas.prose(row, line.text, line.style, sheet=line.sheet)
        if line.style == "heading" and row > place.top:
            canvas.tall(row, height_px(1, size_of("heading")) + _ABOVE_HEADING_PX)


def draw_figures(canvas: Canvas, place: FiguresPlace) -> None:
    """Draw a list of figures: label, value, remark."""
    if place.title is not None:
        canvas.prose(place.title, place.figures.title, "heading")
    for row, item in enumerate(place.figures.items, place.top):
        canvas.prose(row, item.label, "label", 0, place.value_column - 1, sheet=item.sheet)
        _draw_value(canvas, place, row, item)
        if item.remark:
            canvas.prose(row, item.remark, "note", place.value_column + 1, place.remark_end)


def _draw_value(canvas: Canvas, place: FiguresPlace, row: int, item: Figure) -> None:
    """Write the value; a text too long for its column runs on under the remark's place, or is wrapped."""
    column = place.value_column
    last = column if item.remark else place.remark_end
    shown = given(item.value)
    text = shown if isinstance(shown, str) else ""
    room = canvas.plan.px(column, column)
    if "\n" not in text and text_px(text, bold=True) + PADDING_PX <= room:
        traits: frozenset[Trait] = frozenset({"strong", "left"})
        if place.figures.large:
            traits |= {"large"}
            canvas.tall(row, height_px(1, LARGE_SIZE))
        canvas.cells.put(row, column, item.value, canvas.cells.formats.cell(item.look, traits))
        return
    form = canvas.cells.formats.cell(
        item.look if leans_left(item.look) else "text", frozenset({"strong", "wrap"})
    )
    canvas.tall(row, height_px(lines_needed(text, canvas.plan.px(column, last), bold=True)))
    canvas.cells.across(row, column, last, item.value, form)


def _draw_caution(canvas: Canvas, row: int, line: Line) -> None:
    """Draw a framed line that begins with its word."""
    said = line.text.strip().removeprefix(_CAUTION).strip()
    text = clean(f"{_CAUTION} {said}").removeprefix(f"{_CAUTION} ")
    last = canvas.plan.prose - 1
    form = canvas.cells.formats.role("caution", wrap=True)
    canvas.cells.across(row, 0, last, None, form)
    canvas.cells.lead_in(row, 0, _CAUTION, text, "caution word", form)
    canvas.tall(row, height_px(lines_needed(f"{_CAUTION} {text}", canvas.plan.px(0, last))) + 8)
