"""What `reporter pick` prints: the choices, the techniques in their order, what did best."""

import csv
import io
from typing import Any

import click
import pandas as pd

from reporter.cli import say
from reporter.compute.picker.words import BEHIND, SAID, STEADIED, answer_words, choice_words, sentence
from reporter.compute.records import records
from reporter.run.pick import Answer
from reporter.schema.choices import ANY, CHOICES
from reporter.write.tables import safe_text

_LABEL = 18
_COLUMNS = ("technique", "trips", "rod_hours", "fish", "fish_per_rod_hour", "shrunken_rate")


def print_answer(answer: Answer, name: str) -> None:
    """Print an answer as a person reads it."""
    say.result(name)
    picked, record = answer.picked, answer.record
    if picked is None or record is None:
        say.result("Nothing to choose from yet: no stint has usable effort.", indent=2)
        return
    for choice in CHOICES:
        number = answer.numbers.get(choice.key, 0)
        label = (ANY, *record.labels[choice.key])[number]
        became = f" ({choice_words(choice.key, picked.kept, answer.numbers)})" if number else ""
        say.labelled(choice.words, f"{label}{became}", _LABEL)
    say.result()
    fitting = f"{picked.hours[picked.kept]:,.1f} of {picked.hours[0]:,.1f} rod-hours fit."
    say.result(f"{fitting} {sentence(picked)}", indent=2)
    if record.left_out:
        say.result(f"Left out: {record.left_out} whose fish cannot be told apart by day.", indent=2)
    say.result()
    headings = ("What worked", "trips", "rod-hours", "landed", "per rod-hour", "steadied", "record")
    say.table(headings, [_line(row) for row in _ranked(picked.table)])
    say.result()
    say.result(f"Record: {'; '.join(BEHIND)}", indent=2)
    say.result(STEADIED, indent=2)
    say.result()
    for key, table in picked.best.items():
        say.labelled(f"Best {key}", _best(table), _LABEL)


def print_csv(answer: Answer, _name: str) -> None:
    """Print the list as CSV, best first, with every digit."""
    rows = [] if answer.picked is None else _ranked(answer.picked.table)
    text = io.StringIO()
    writer = csv.writer(text, lineterminator="\n")
    writer.writerow((*_COLUMNS, "record"))
    writer.writerows([*(_exact(row[key]) for key in _COLUMNS), answer_words(row["trips"])] for row in rows)
    click.echo(text.getvalue(), nl=False)


def _ranked(table: pd.DataFrame) -> list[dict[str, Any]]:
    return records(table[table["place"] > 0].sort_values("place", kind="stable"))


def _line(row: dict[str, Any]) -> tuple[str, ...]:
    return (
        row["technique"],
        f"{row['trips']:,}",
        f"{row['rod_hours']:,.1f}",
        f"{row['fish']:,.0f}",
        f"{row['fish_per_rod_hour']:.2f}",
        "" if pd.isna(row["shrunken_rate"]) else f"{row['shrunken_rate']:.2f}",
        answer_words(row["trips"]).partition(":")[0],
    )


def _exact(value: Any) -> str:
    if isinstance(value, str):
        return safe_text(value)
    return "" if pd.isna(value) else f"{float(value):.15g}"


def _best(table: pd.DataFrame) -> str:
    if table.empty:
        return "not recorded"
    for row in records(table[table["place"] == 1]):
        hours, rate = f"{row['rod_hours']:,.1f} rod-hours", f"{row['fish_per_rod_hour']:.2f} per rod-hour"
        return f"{row['label']} ({row['fish']:,.0f} landed in {hours}, {rate})"
    return SAID["little"]
