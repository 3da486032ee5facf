"""What one needs to draw on a sheet: its plan, its cells, and how tall its rows have become."""

from xlsxwriter.workbook import Workbook

from reporter.books.blocks import Link
from reporter.write.cells import Cells, done
from reporter.write.clean import clean
from reporter.write.measure import PADDING_PX, height_px, lines_needed, text_px
from reporter.write.names import Names
from reporter.write.place import SheetPlan
from reporter.write.style import Role, is_bold, size_of


class Canvas:
    """A sheet being drawn."""

    def __init__(self, workbook: Workbook, plan: SheetPlan, cells: Cells, names: Names) -> None:
        self.workbook = workbook
        self.plan = plan
        self.cells = cells
        self.names = names
        self._heights: dict[int, int] = {}

    def tall(self, row: int, pixels: int) -> None:
        """Ask for a height of a row; the tallest wish counts."""
        self._heights[row] = max(self._heights.get(row, 0), pixels)

    def height(self, row: int) -> int:
        """Return the height of a row, as asked for so far, in pixels."""
        return self._heights.get(row, height_px(1))

    def set_heights(self) -> None:
        """Give the rows the heights that were asked for."""
        for row, pixels in sorted(self._heights.items()):
            done(self.cells.sheet.set_row_pixels(row, pixels), f"height of row {row}")

    def prose(
        self, row: int, said: str, role: Role, first: int = 0, last: int | None = None, *, sheet: str = ""
    ) -> None:
        """Write text from one column to another, over the page's width unless told.

        Only text that must be wrapped is merged over the columns; any other runs on over the blank ones.
        sheet: the sheet of this book that it leads to, unless it must be wrapped: LibreOffice wraps no link.
        """
        text = clean(said)
        end = max(first, self.plan.prose - 1 if last is None else last)
        size, bold = size_of(role), is_bold(role)
        room = self.plan.px(first, end)
        fits = "\n" not in text and text_px(text, size, bold=bold) + PADDING_PX <= room
        leads = bool(sheet) and fits
        form = self.cells.formats.role(role, wrap=not fits, link=leads)
        lines = 1 if fits else lines_needed(text, room, size, bold=bold)
        self.tall(row, height_px(lines, size))
        self.cells.across(row, first, first if fits else end, text, form)
        if leads:
            self.cells.link(row, first, text, Link("", sheet), form)
