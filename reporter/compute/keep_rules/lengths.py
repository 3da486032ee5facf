"""Rules about the length of each kept fish: shortest, longest, slot. Compared in mm and never rounded."""

from collections.abc import Iterator
from typing import NamedTuple

import numpy as np
import pandas as pd

from reporter.compute.keep_rules.found import (
    Found,
    entered,
    fish_said,
    gathered,
    length_said,
    limit_said,
    of_row,
)
from reporter.compute.keep_rules.kinds import NOT, SURELY
from reporter.compute.keep_rules.rule import LIMIT, KeepRule
from reporter.compute.keep_rules.standing import Standing
from reporter.schema.keep_tables import CANNOT_CHECK, CHECK_THIS
from reporter.schema.species import BLACK_BASS
from reporter.schema.units import System

TOLERANCE_MM = 1e-6
"""What the conversion of a unit may add to an exact length; far below what anybody measures."""


class Sized(NamedTuple):
    """Kept fish that a rule holds for.

    known: where kind, day and length are sure, so that the length decides. why: for the others, why not.
    """

    known: np.ndarray
    why: np.ndarray


def sized(fish: pd.DataFrame, holds: np.ndarray, rule: KeepRule) -> Sized:
    """Return which fish have a length that a rule may be held against; holds: its column of Standing."""
    open_kind = (holds != SURELY) | (fish["species"] == BLACK_BASS.code).to_numpy()
    why = np.select(
        [
            np.full(len(fish), rule.fork_length),
            open_kind,
            fish["length_mm"].isna().to_numpy(),
            fish["estimated"].to_numpy(),
        ],
        [
            "is about fork length, and the log holds total length",
            "is for a kind or a day that the log does not tell",
            "needs its length",
            "needs its length measured, not estimated",
        ],
        default="",
    )
    return Sized((holds > NOT) & (why == ""), np.where(holds > NOT, why, ""))


def lengths(fish: pd.DataFrame, stands: Standing, system: System) -> Iterator[Found]:
    """Yield kept fish whose length a rule does not allow, or whose length is not known where it decides."""
    kept = (fish["fate"] == "kept").to_numpy() & ~stands.blocked
    for column, rule in enumerate(stands.read.rules):
        if rule.action != LIMIT or not rule.has_lengths or not rule.binds_all:
            continue
        made = sized(fish, np.where(kept, stands.holds[:, column], NOT), rule)
        length = fish["length_mm"].to_numpy(dtype=float)
        broken, unsaid = _broken(length, rule, system)
        for limit, found in broken.items():
            for row in gathered(fish, made.known & found, "length_mm"):
                fish_are = fish_said(
                    row["fish"], [row["species"]], f" {length_said(row['length_mm'], system)}"
                )
                said = f"{fish_are} {entered('kept')}; your rule {rule.name} {limit}."
                yield of_row(row, CHECK_THIS, (rule.name,), said)
        table = fish.assign(
            why=np.where(made.known & unsaid, "does not say if its Slot ends count", made.why)
        )
        for row in gathered(table, (table["why"] != "").to_numpy(), "why"):
            fish_are = fish_said(row["fish"], [row["species"]])
            said = f"{fish_are} {entered('kept')}; your rule {rule.name} {row['why']}."
            yield of_row(row, CANNOT_CHECK, (rule.name,), said)


def longer(length: np.ndarray, limit_mm: float) -> np.ndarray:
    """Return whether each length (mm) is more than a limit; equal is not."""
    return length > limit_mm + TOLERANCE_MM


def shorter(length: np.ndarray, limit_mm: float) -> np.ndarray:
    """Return whether each length (mm) is less than a limit; equal is not."""
    return length < limit_mm - TOLERANCE_MM


def _broken(length: np.ndarray, rule: KeepRule, system: System) -> tuple[dict[str, np.ndarray], np.ndarray]:
    """Return what a rule says -> fish that it does not allow, and fish at an end of a slot without ends."""
    low, high = rule.slot_mm
    inside = longer(length, low) & shorter(length, high)
    at_end = ~longer(length, high) & ~shorter(length, low) & ~inside & ~np.isnan(length + low)
    return {
        f"has a minimum of {limit_said(rule.min_mm, system)}": shorter(length, rule.min_mm),
        f"has a maximum of {limit_said(rule.max_mm, system)}": longer(length, rule.max_mm),
        f"protects {limit_said(low, system, high)}": inside | (at_end & (rule.slot_ends == "IN")),
    }, at_end & (rule.slot_ends == "")
