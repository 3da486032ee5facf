"""Published length categories: from which total length a fish is of stock, quality ... trophy length.

Source: the open data of a fisheries textbook's companion package (Ogle 2016), two stored versions of which
agree, after Gabelhouse 1984, N. Am. J. Fish. Manage. 4:273-285 (from memory). Both systems were published;
neither is a conversion of the other, so a fish is compared in the unit in which it was measured.
"""

from typing import NamedTuple

from reporter.schema.units import System

LENGTH_NAMES = ("stock", "quality", "preferred", "memorable", "trophy")
"""The categories in ascending order: classes 1 to 5 begin with them, class 0 lies below stock."""

TROPHY_CLASS = len(LENGTH_NAMES)

LENGTH_CLASSES = tuple(range(1, TROPHY_CLASS + 1))
"""The classes of fish of stock length or longer."""


class LengthCategories(NamedTuple):
    """The lengths from which on a species is of stock, quality ... trophy length, itself included."""

    inches: tuple[int, int, int, int, int]
    cm: tuple[int, int, int, int, int]

    def bounds(self, system: System) -> tuple[int, int, int, int, int]:
        """Return them in inches or in centimetres."""
        return self.inches if system == "us" else self.cm


_SMALLMOUTH = LengthCategories((7, 11, 14, 17, 20), (18, 28, 35, 43, 51))
_CRAPPIE = LengthCategories((5, 8, 10, 12, 15), (13, 20, 25, 30, 38))

LENGTH_CATEGORIES: dict[str, LengthCategories] = {
    "LMB": LengthCategories((8, 12, 15, 20, 25), (20, 30, 38, 51, 63)),
    "SMB": _SMALLMOUTH,
    "SPB": _SMALLMOUTH,
    "BLG": LengthCategories((3, 6, 8, 10, 12), (8, 15, 20, 25, 30)),
    "BLC": _CRAPPIE,
    "WHC": _CRAPPIE,
    "WAE": LengthCategories((10, 15, 20, 25, 30), (25, 38, 51, 63, 76)),
    "NOP": LengthCategories((14, 21, 28, 34, 44), (35, 53, 71, 86, 112)),
    "CCF": LengthCategories((11, 16, 24, 28, 36), (28, 41, 61, 71, 91)),
    "RBT": LengthCategories((10, 16, 20, 26, 31), (25, 40, 50, 65, 80)),
    "STB": LengthCategories((12, 20, 30, 35, 45), (30, 51, 76, 89, 114)),
    "MUE": LengthCategories((20, 30, 38, 42, 50), (51, 76, 97, 107, 127)),
}
"""House code of a species -> its categories; those of striped bass are for landlocked ones."""
