"""Fee worksheets: the arithmetic of what a guide typed on Fees, line by line."""

from decimal import ROUND_HALF_UP, Decimal
from typing import Any

import numpy as np
import pandas as pd

from reporter.compute.paperwork.typed import sheet_rows, typed_columns
from reporter.schema.paperwork import LAND_SHARE_WHOLE, LAND_SHARES
from reporter.tidy.season import TidyLog

_CENT, _ONE, _ZERO = Decimal("0.01"), Decimal(1), Decimal(0)
_TYPED = ("document", "receipts", "deductions", "share_on_land", "rate", "minimum", "prepaid")
_FIGURES = (
    *("receipts", "deductions", "adjusted"),
    *("share_on_land", "share_read", "part", "base", "rate", "fee"),
    *("minimum", "charged", "prepaid", "due"),
)


def fee_table(log: TidyLog) -> pd.DataFrame:
    """Return one row a row of Fees, each line of its worksheet a column.

    row, document; receipts, deductions, adjusted (their difference, at least 0); share_on_land as typed and
    share_read as the table of cuts takes it (per cent), part (of the receipts that bears the fee), base
    (adjusted x part), rate (per cent), fee (base x rate), minimum, charged (the larger of the two), prepaid,
    due (charged less prepaid, at least 0): money to the cent, halves up; NaN where it cannot be worked out.
    notes: sentences.
    """
    fees = sheet_rows(log, "fees")
    columns = typed_columns(fees, _TYPED)
    made = [worksheet(*row) for row in zip(*columns.values(), strict=True)]
    table = pd.DataFrame(made, columns=["document", *_FIGURES, "notes"])
    figures = {key: table[key].astype(np.float64) for key in _FIGURES}
    return table.assign(**figures).assign(row=fees["row"].to_numpy(dtype=np.int64))


def worksheet(
    document: str,
    receipts: float | None,
    deductions: float | None,
    share_on_land: float | None,
    rate: float | None,
    minimum: float | None,
    prepaid: float | None,
) -> dict[str, Any]:
    """Return the lines of one worksheet; see `fee_table`. share_on_land, rate: 0 to 1; None: not typed."""
    notes: list[str] = []
    part, share_read = _part(share_on_land, notes)
    lines: dict[str, Decimal | None] = {
        "receipts": _exact(receipts),
        "deductions": _exact(deductions) or _ZERO,
        "share_on_land": _per_cent(share_on_land),
        "share_read": share_read,
        "part": part,
        "rate": _per_cent(rate),
        "minimum": _exact(minimum),
        "prepaid": _exact(prepaid) or _ZERO,
    }
    lines |= _worked_out(lines, part, notes)
    return {"document": document, **lines, "notes": tuple(notes)}


def _worked_out(
    lines: dict[str, Decimal | None], part: Decimal, notes: list[str]
) -> dict[str, Decimal | None]:
    receipts, rate = lines["receipts"], lines["rate"]
    deductions, prepaid = lines["deductions"] or _ZERO, lines["prepaid"] or _ZERO
    if receipts is None or rate is None:
        lacking = [name for name, value in (("Receipts", receipts), ("Rate", rate)) if value is None]
        notes.append(f"{' and '.join(lacking)} not typed on Fees: no fee can be worked out.")
        return dict.fromkeys(("adjusted", "base", "fee", "charged", "due"))
    if deductions > receipts:
        notes.append("Deductions are more than the receipts: no receipts are left.")
    adjusted = max(receipts - deductions, _ZERO)
    fee = _to_cent(adjusted * part * rate / 100)
    minimum = lines["minimum"]
    charged = fee if minimum is None else max(fee, minimum)
    if charged > fee:
        notes.append("The minimum applies.")
    if prepaid > charged:
        notes.append("More is prepaid than the fee: no refund is worked out, ask the land manager.")
    return {
        "adjusted": _to_cent(adjusted),
        "base": _to_cent(adjusted * part),
        "fee": fee,
        "charged": _to_cent(charged),
        "due": _to_cent(max(charged - prepaid, _ZERO)),
    }


def _part(share_on_land: float | None, notes: list[str]) -> tuple[Decimal, Decimal | None]:
    """Return the part of the receipts that bears the fee, and the share by which it was found, in per cent.

    In the gap of the table the share is rounded to a whole per cent, halves up, and that is said.
    """
    share = _per_cent(share_on_land)
    if share is None:
        return _ONE, None
    if LAND_SHARES[-1].up_to < share < LAND_SHARE_WHOLE:
        read = share.quantize(_ONE, ROUND_HALF_UP)
        notes.append(
            f"{share.normalize():f} %, read as {read} %: the table of cuts says nothing between "
            f"{LAND_SHARES[-1].up_to} and {LAND_SHARE_WHOLE} %. Ask the land manager."
        )
        share = read
    for line in LAND_SHARES:
        if share < line.up_to or (share == line.up_to and not line.below):
            return line.part, share
    return _ONE, share


def _exact(typed: float | None) -> Decimal | None:
    """Return a number as it was typed: floats print the shortest number that means them."""
    return None if typed is None else Decimal(repr(float(typed)))


def _per_cent(share: float | None) -> Decimal | None:
    """Return a share (0 to 1) in per cent, without the dust of the conversion."""
    return None if share is None else Decimal(repr(round(100 * float(share), 9)))


def _to_cent(amount: Decimal) -> Decimal:
    return amount.quantize(_CENT, ROUND_HALF_UP)
