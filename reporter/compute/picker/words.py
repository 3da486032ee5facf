"""What is said of a pick, the same on the sheet and in the terminal."""

from collections.abc import Mapping

import numpy as np

from reporter.compute.picker.pick import HOURS_DECIMALS, Picked
from reporter.schema.choices import STEPS
from reporter.schema.thresholds import (
    GOOD_RECORD_TRIPS,
    MIN_OWN_TRIPS,
    MIN_PICK_HOURS,
    MIN_SHRUNKEN_TECHNIQUES,
)

SAID = {
    "any": "any",
    "kept": "kept",
    "near": "bands beside it too",
    "let go": "let go",
    "unknown": "not in the list: any",
    "little": "too little record",
}

BEHIND = (
    f"thin: under {MIN_OWN_TRIPS} trips",
    f"some: {MIN_OWN_TRIPS} to {GOOD_RECORD_TRIPS - 1} trips",
    f"good: {GOOD_RECORD_TRIPS} trips and over",
)

STEADIED = (
    "Steadied: the rate, drawn towards that of all techniques the more, the less record there is of it."
)
"""What the word means, under a table that has it."""


def choice_words(key: str, kept: int, chosen: Mapping[str, int]) -> str:
    """Return what became of a choice where so many steps are kept."""
    if not chosen.get(key, 0):
        return SAID["any"]
    steps = [place for place, (of, _) in enumerate(STEPS, start=1) if of == key]
    if kept >= max(steps):
        return SAID["kept"]
    return SAID["near"] if kept >= min(steps) else SAID["let go"]


def answer_words(trips: float) -> str:
    """Return how much record stands behind a technique on so many trips."""
    return BEHIND[(trips >= MIN_OWN_TRIPS) + (trips >= GOOD_RECORD_TRIPS)]


SENTENCES = {
    "whole": f"Your whole record is under {MIN_PICK_HOURS:g} rod-hours: too little to choose by.",
    "few": f"Fewer than {MIN_SHRUNKEN_TECHNIQUES} techniques fit: in the order of their plain rates.",
    "alike": "No detectable difference between these techniques: their order says nothing.",
    "steadied": "In the order of steadied rates.",
}


def sentence(picked: Picked) -> str:
    """Return what the order of the techniques rests on."""
    if picked.kept == 0 and round(picked.hours[0], HOURS_DECIMALS) < MIN_PICK_HOURS:
        return SENTENCES["whole"]
    if not np.isfinite(picked.variance):
        return SENTENCES["few"]
    return SENTENCES["steadied" if picked.variance > 0 else "alike"]
