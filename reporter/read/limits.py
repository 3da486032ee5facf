"""How much a log may hold. Beyond it a file is refused, in a sentence, before it can take the computer along.

A full season is some 2,000 rows and 300 kB; the largest log that is measured, 100,000 fish of 12 columns,
holds 1.2 million values, 12 million letters and 10 MB. Each limit leaves room above that.
"""

from collections.abc import Iterable

from reporter.read.errors import Refused
from reporter.read.raw import RawSheet
from reporter.schema.a1 import address

MIB = 1 << 20

MAX_FILE = 512 * MIB  # of a workbook as it lies on the disk: no more than its parts may unpack to
MAX_SHEETS = 1000  # a sheet a day for a year, and as many again
MAX_ROWS = 1_048_576  # what spreadsheet programs have; a row number beyond it is damage, or a trap
MAX_COLUMNS = 16_384  # the same
MAX_MERGES = 100_000  # a merged cell a fish
MAX_STYLES = 200_000  # tags of a part that is parsed whole: a workbook may have 65,490 cell styles of three
MAX_TAGS = 2_000_000  # of any other part but a sheet: half a million different texts of four tags each

# In the sheets of one log:
MAX_VALUES = 2_000_000  # 100,000 fish of 12 columns take 1.2 million
MAX_CELLS = 6_000_000  # with the formatted blank ones, which take time (half a minute) but no room
MAX_AREA = 20_000_000  # the same from column A to each row's last cell, which may lie far to the right
MAX_LETTERS = 64 * MIB  # one text can stand in many cells: packed it is nothing, written out it fills a disk
LONGEST_TEXT = 32_767  # UTF-16 units: what a cell of a spreadsheet program holds, and so the report's

NEW_WORKBOOK = "copy your rows into a new workbook, save that and try again"
ONE_SEASON = "keep one season in it and try again"


def too_much(what: str, remedy: str = NEW_WORKBOOK) -> Refused:
    """Make the refusal of a file that holds more than ``what``, which names the limit."""
    return Refused(f"it holds more than {what}, far more than any season log; {remedy}")


def check_texts(sheets: Iterable[RawSheet]) -> None:
    """Refuse a log with a text that no cell can hold, or with far more text than any season."""
    letters = 0
    for sheet in sheets:
        for number, row in zip(sheet.numbers, sheet.rows, strict=True):
            lengths = [len(value) for value in row if type(value) is str]
            letters += sum(lengths)
            if lengths and max(lengths) > LONGEST_TEXT // 2:
                _check_row(sheet.name, number, row)
    if letters > MAX_LETTERS:
        raise too_much(f"{MAX_LETTERS:,} letters", ONE_SEASON)


def _check_row(name: str, number: int, row: tuple[object, ...]) -> None:
    for column, value in enumerate(row, start=1):
        if isinstance(value, str) and len(value.encode("utf-16-le", "surrogatepass")) > 2 * LONGEST_TEXT:
            where = f"cell {address(number, column)} of its sheet “{name}”"
            raise Refused(
                f"{where} holds more than {LONGEST_TEXT:,} letters, the most a cell can; shorten the text"
            )
