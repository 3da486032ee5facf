"""Behind What worked: the choices by number, how much of the record fits, what the answer rests on."""

from collections.abc import Mapping, Sequence

import numpy as np

from reporter.books.blocks import Block, Cell, Field, Figure, Figures, Line, Live, Sheet, Table, Text
from reporter.books.season.pick_best import best_tables
from reporter.books.season.pick_lists import KEY, pick_lists
from reporter.books.season.pick_steadied import steadied_on_days, steadied_techniques
from reporter.books.season.steadied import moments
from reporter.books.words import counted
from reporter.compute.picker.pick import HOURS_DECIMALS, Picked
from reporter.compute.picker.record import PickRecord
from reporter.compute.picker.words import SENTENCES, sentence
from reporter.schema.choices import CHOICES, STEPS, TEMPERATURE
from reporter.schema.thresholds import MIN_PICK_HOURS, MIN_SHRUNKEN_TECHNIQUES

NAME = "Behind What worked"

_LEAD = "How the answer on What worked comes about; it follows the choices made there."


def found(picked: Picked) -> Figures:
    """Return how much of the record fits, and what the order rests on."""
    whole = f"ROUND(INDEX({{level.rod_hours}},1),{HOURS_DECIMALS})"
    said = (
        f'IF(AND({{picked.kept}}=0,{whole}<{MIN_PICK_HOURS:g}),"{SENTENCES["whole"]}",'
        f'IF({{moments.techniques}}<{MIN_SHRUNKEN_TECHNIQUES},"{SENTENCES["few"]}",'
        f'IF({{moments.variance}}>0,"{SENTENCES["steadied"]}","{SENTENCES["alike"]}")))'
    )
    hours = float(picked.hours[picked.kept])
    fit = Live("INDEX({level.rod_hours},{picked.kept}+1)", hours)
    return Figures(
        "picked",
        (
            Figure("hours", "Rod-hours that fit", fit, "one"),
            Figure(
                "kept",
                f"Steps of fit kept, of {len(STEPS)}",
                Live("MAX({level.enough})", picked.kept),
                "plain",
            ),
            Figure("said", "The order", Live(said, sentence(picked))),
        ),
    )


def fits_formula(bands: int) -> str:
    """Return the formula of the steps that a stint fits, in order; bands: those of water temperature."""
    formula = "0"
    for key, exact in reversed(STEPS):
        number, own = f"{{chosen.{key}}}", f"{{row.{key}_no}}"
        fit = f"({own}={number})" if exact else f"(ABS({own}-{number})<=1)*({own}<={bands})"
        formula = f"IF(({number}=0)+{fit}>0,1+{formula},0)"
    return formula


def behind(record: PickRecord, picked: Picked, chosen: Mapping[str, int], kappa: float) -> Sheet:
    """Return the sheet with all on which the answer stands."""
    steadied = steadied_on_days(picked, kappa)
    blocks: tuple[Block, ...] = (
        Text((Line(NAME, "title"), Line(_LEAD, "lead"), *_left_out(record))),
        _chosen(chosen),
        _levels(picked),
        moments(steadied),
        steadied_techniques(picked, steadied),
        *best_tables(picked),
        pick_lists(record.labels),
    )
    return Sheet(NAME, blocks, group="behind", landscape=True, private=True)


def _left_out(record: PickRecord) -> tuple[Line, ...]:
    if not record.left_out:
        return ()
    pairs = counted(record.left_out, "technique on a trip", "techniques on trips")
    return (Line(f"Left out: {pairs} fished under several kinds of day whose fish cannot be told apart."),)


def _chosen(chosen: Mapping[str, int]) -> Figures:
    items = tuple(
        Figure(choice.key, choice.words, _number(row, choice.key, chosen), "plain")
        for row, choice in enumerate(CHOICES, start=1)
    )
    return Figures("chosen", items, title="Your choices by number (0: any)")


def _number(row: int, key: str, chosen: Mapping[str, int]) -> Live:
    """Return the number of a choice; text is compared in a way that knows no wildcards."""
    cell = f"INDEX({{choice.pick}},{row})"
    formula = f'IF({cell}="",0,SUMPRODUCT(--({{{KEY}.{key}}}={cell}),{{{KEY}.no}}))'
    return Live(formula, chosen.get(key, 0))


def _levels(picked: Picked) -> Table:
    words = {choice.key: choice.words for choice in CHOICES}
    steps = list(range(len(STEPS) + 1))
    labels = ["everything", *(_step_words(words[key], key, exact) for key, exact in STEPS)]
    enough = [
        step if np.round(hours, HOURS_DECIMALS) >= MIN_PICK_HOURS else 0
        for step, hours in zip(steps, picked.hours, strict=True)
    ]
    fitting = 'SUMIFS({cond_stint.pick_hours},{cond_stint.fits},">="&{row.step})'
    at_least = f"IF(ROUND({{row.rod_hours}},{HOURS_DECIMALS})>={MIN_PICK_HOURS:g},{{row.step}},0)"
    columns: dict[str, Sequence[Cell]] = {
        "label": labels,
        "step": steps,
        "rod_hours": [Live(fitting, hours) for hours in picked.hours.tolist()],
        "enough": [Live(at_least, step) for step in enough],
    }
    fields = (
        Field("label", "Fits so far"),
        Field("step", "Step", "plain"),
        Field("rod_hours", "Rod-hours", "one"),
        Field("enough", "Enough", "plain"),
    )
    return Table("level", fields, columns, title="How much of your record fits, step by step")


def _step_words(words: str, key: str, exact: bool) -> str:
    if key != TEMPERATURE:
        return words
    return f"{words}, its band" if exact else f"{words}, its band and those beside it"
