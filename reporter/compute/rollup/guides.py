"""Guides of a roll-up and their logs: by code, or by the number of the log."""

from collections import Counter
from collections.abc import Mapping, Sequence

import pandas as pd

from reporter.compute.catch import FATES
from reporter.compute.rollup.kept import DIGITS, Kept
from reporter.compute.rollup.log_sums import EFFORT
from reporter.compute.rollup.missed import COUNTED, Missed
from reporter.schema.problems import CATALOGUE
from reporter.schema.rollup import MIN_GUIDES

_ROWS = ["rows_read", "rows_used", "rows_set_aside", "trips_set_aside"]

Called = Mapping[int, str]
"""Guide (number) -> what he is called in the roll-up."""


def guide_labels(logs: pd.DataFrame) -> dict[int, str]:
    """Return what each guide is called: the code that his first log with one has, else guide and log number.

    A log of which it is not known whose it is is called by its number. What is called as another guide is
    gets the number of its log behind it.
    """
    codes = logs[logs["known"] & (logs["code"] != "")].drop_duplicates("guide").set_index("guide")["code"]
    first = logs.drop_duplicates("guide")
    called: dict[int, str] = {}
    there: set[str] = set()
    for log, guide, known in zip(first["log"], first["guide"], first["known"], strict=True):
        label = codes.get(guide, f"guide {log}" if known else f"log {log}, guide not known")
        called[guide] = label if label.casefold() not in there else f"{label} (log {log})"
        there.add(called[guide].casefold())
    return called


def rows_aside(logs: pd.DataFrame, *, names: bool) -> int | None:
    """Return how many rows of Trips are set aside; None where that is what too few guides wrote.

    names: whether it is told anyhow.
    """
    aside = logs[logs["trips_set_aside"] > 0]
    few = aside.loc[aside["known"], "guide"].nunique() < MIN_GUIDES
    return None if few and len(aside) and not names else int(aside["trips_set_aside"].sum())


def guide_effort(kept: Kept, called: Called, *, names: bool) -> pd.DataFrame:
    """Return a row a guide: guide, guide_name ("" unless names), logs, EFFORT (0 without a trip)."""
    logs = kept.logs
    effort = _by_guide(kept, ["guide"], EFFORT).reindex(list(called), fill_value=0.0)
    return pd.DataFrame(
        {
            "guide": list(called.values()),
            "guide_name": _names(logs, called) if names else "",
            "logs": logs.groupby("guide").size().reindex(list(called)).to_numpy(),
            **{name: effort[name].to_numpy() for name in EFFORT},
        }
    )


def guide_fish(kept: Kept, called: Called) -> pd.DataFrame:
    """Return a row a guide and species (code): guide, number (of the guide), species, FATES."""
    fish = _by_guide(kept, ["guide", "species"], FATES).reset_index().rename(columns={"guide": "number"})
    return fish.assign(guide=fish["number"].map(called))


def _by_guide(kept: Kept, keys: list[str], figures: Sequence[str]) -> pd.DataFrame:
    rows = kept.by_guide[kept.by_guide["figure"].isin(figures)]
    apart = rows.set_index([*keys, "figure"])["value"].round(DIGITS).astype(float)
    return apart.unstack(fill_value=0).reindex(columns=list(figures), fill_value=0.0)  # noqa: PD010 - keys are unique


def _names(logs: pd.DataFrame, called: Called) -> list[str]:
    """Return the names that each guide's logs give, each once."""
    by_guide = {guide: list(dict.fromkeys(names)) for guide, names in logs.groupby("guide")["guide_name"]}
    return ["; ".join(name for name in by_guide[guide] if name) for guide in called]


def log_table(logs: pd.DataFrame, missed: Sequence[Missed], called: Called, *, names: bool) -> pd.DataFrame:
    """Return a row a log by its number: log, guide, file ("" unless names), state, its rows."""
    counted = logs[["log", "guide", "file", *_ROWS]].assign(state=COUNTED, guide=logs["guide"].map(called))
    others = pd.DataFrame(
        [{"log": log.log, "guide": "", "file": log.file, "state": log.state} for log in missed],
        columns=["log", "guide", "file", "state"],
    )
    made = pd.concat([counted, others], ignore_index=True).sort_values("log", ignore_index=True)
    return made if names else made.assign(file="")


def problem_table(kept: Kept, missed: Sequence[Missed], called: Called) -> pd.DataFrame:
    """Return a row a log and kind of problem: log, guide, code, effect, title, found; stops first."""
    guides = kept.logs.set_index("log")["guide"].map(called)
    found = kept.problems.assign(guide=kept.problems["log"].map(guides))
    stops = [
        {"log": log.log, "guide": "", "code": code, "found": count}
        for log in missed
        for code, count in Counter(log.codes).items()
    ]
    made = pd.concat([found, pd.DataFrame(stops, columns=found.columns)], ignore_index=True)
    findings = [CATALOGUE[code] for code in made["code"]]
    made = made.assign(
        effect=[finding.effect for finding in findings], title=[finding.title for finding in findings]
    )
    order = made.assign(note=made["effect"] == "note").sort_values(["log", "note", "effect", "code"])
    return order.drop(columns="note").reset_index(drop=True)
