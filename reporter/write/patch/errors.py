"""Why cells of a workbook could not be changed."""

from typing import Final

NOT_IN_ORDER: Final = "the cells of one of its sheets are not stored in order"


class CannotPatch(Exception):  # noqa: N818 - named as it reads in an except clause
    """No copy was made; ``str()`` is a reason without a full stop, to complete "I cannot mend FILE: "."""


class CellsRefused(Exception):  # noqa: N818 - the same
    """Some cells cannot be changed: (sheet, cell address) -> why, as a sentence's second half."""

    def __init__(self, reasons: dict[tuple[str, str], str]) -> None:
        super().__init__(f"{len(reasons)} cells")
        self.reasons = reasons
