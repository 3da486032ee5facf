"""Where a printed sheet begins a new page, so that no chart or short table is cut in two."""

from collections.abc import Iterator
from typing import Final

from reporter.write.canvas import Canvas
from reporter.write.place import ChartPlace, TextPlace
from reporter.write.style import Paper

MARGINS_IN: Final = {"left": 0.5, "right": 0.5, "top": 0.7, "bottom": 0.7}

_PAPERS_IN: Final = {"letter": (8.5, 11.0), "a4": (8.27, 11.69)}
_PX_PER_IN = 96
_SURE = 0.96  # of a page's height: no two programs measure alike
_A_TITLE, _HALF = 0.25, 0.5  # of a page's height
_HEADING_LINES = 2  # text of so few lines goes with what follows it


def page_breaks(canvas: Canvas, paper: Paper) -> list[int]:
    """Find the rows (from 0) before which a page ends, wherever a block would not fit on what is left of it.

    A block taller than a page, as a long table, runs on over as many pages as it takes, begins on a new one
    where more than half of one is taken, and has the last one to itself: no two programs end it at the same
    place. A table never leaves the first page with hardly more than the title on it. A print area begins on a
    page of its own without a break.
    """
    areas = set(area_starts(canvas))
    room = _page_height_px(canvas, paper)
    breaks: list[int] = []
    used = 0.0
    for first, last, whole in _kept_together(canvas):
        used = 0.0 if first in areas else used
        height = sum(canvas.height(row) for row in range(first, last + 1))
        titled = not breaks and first not in areas
        least = 0.0 if whole else room * _least_taken(height <= room, titled=titled)
        if used > least and used + height > room:
            breaks.append(first)
            used = 0.0
        used = used + height if used + height <= room else room
    return breaks


def _least_taken(fits: bool, *, titled: bool) -> float:
    """Return how much of a page must be taken before a table leaves it, by whether it fits one."""
    if not fits:
        return _HALF
    return _A_TITLE if titled else 0.0


def area_starts(canvas: Canvas) -> list[int]:
    """Return the rows (from 0) at which blocks begin a print area of their own."""
    places = canvas.plan.places
    return [place.top for place in places if isinstance(place, TextPlace) and place.text.new_area]


def _kept_together(canvas: Canvas) -> Iterator[tuple[int, int, bool]]:
    """Give the first and last row of every block, headings with what they head; whether it is a chart."""
    places, areas = canvas.plan.places, set(area_starts(canvas))
    ends = [place.start - 1 for place in places[1:]] + [canvas.plan.end]
    first: int | None = None
    for place, end in zip(places, ends, strict=True):
        first = place.start if first is None else first
        heads = isinstance(place, TextPlace) and len(place.text.lines) <= _HEADING_LINES
        if not heads or end == canvas.plan.end or end + 1 in areas:
            yield first, end, isinstance(place, ChartPlace)
            first = None


def _page_height_px(canvas: Canvas, paper: Paper) -> float:
    """Height of a page in pixels of the sheet, which shrinks until its columns fit their pages."""
    sides = _PAPERS_IN[paper]
    across, down = reversed(sides) if canvas.plan.sheet.landscape else sides
    width = (across - MARGINS_IN["left"] - MARGINS_IN["right"]) * _PX_PER_IN * canvas.plan.sheet.pages_wide
    height = (down - MARGINS_IN["top"] - MARGINS_IN["bottom"]) * _PX_PER_IN
    shrunk = min(1.0, width / canvas.plan.px(0, canvas.plan.columns - 1))
    return height / shrunk * _SURE
