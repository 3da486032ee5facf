"""Fish: what was landed on each technique of each trip, and what lies outside the rates and why."""

from typing import NamedTuple

import numpy as np
import pandas as pd

from reporter.schema.species import BLACK_BASS, BY_CODE
from reporter.tidy.settings import Settings
from reporter.tidy.species import NO_FISH_CODE

FATES = ("kept", "released", "unknown")

REASONS: dict[str, str] = {
    "no_effort": "its stint has no usable effort",
    "parts_mixed": "its stint is timed by Parts on a trip timed by the clock",
    "effort_over": "its trip has far more effort than it can have had",
    "no_stint": "its technique is not on Effort for that trip",
    "no_technique": "no technique is written, and the trip had several",
    "described": "no technique is written, and the tallies hold them already",
    "beyond_tally": "more fish without a technique than the tallies hold",
    "not_finished": "the trip's log is not finished",
    "not_fished": "the trip is cancelled or void",
    "not_counted": "the species is not counted",
}
"""Why fish are outside the rates, in words."""


def fish_table(
    catch: pd.DataFrame, trips: pd.DataFrame, stints: pd.DataFrame, settings: Settings
) -> pd.DataFrame:
    """Return the used rows of Catch: fish (number), counted, fate, technique filled where a trip had one.

    fate: kept, released or unknown, by the row or else by Season. counted: whether the species is one that
    the rates count.
    """
    used = catch[catch["used"] & catch["trip_no"].isin(trips["trip_no"])].reset_index(drop=True)
    no_fish = used["species"] == NO_FISH_CODE
    fate_if_blank = settings["fate_if_blank"] or "unknown"
    techniques = stints[["trip_no", "technique"]].drop_duplicates()
    only = techniques.drop_duplicates("trip_no", keep=False).set_index("trip_no")["technique"]
    filled = used["technique"].where(used["technique"] != "", used["trip_no"].map(only))
    return used.assign(
        log=0,
        fish=used["count"].fillna(1.0).where(~no_fish, 0.0),
        fate=used["fate"].where(used["fate"] != "", fate_if_blank),
        counted=_counted(used["species"], settings.counted) & ~no_fish,
        technique=filled.fillna("").astype(object),
    )


def _counted(species: pd.Series, counted: frozenset[str] | None) -> pd.Series:
    if counted is None:
        return pd.Series(True, index=species.index)
    codes = set(counted)
    if any(BY_CODE[code].black_bass for code in counted):
        codes.add(BLACK_BASS.code)
    return species.isin(codes)


class Pairs(NamedTuple):
    """Trip-techniques: one row a trip x technique, with leftovers of a trip under no technique.

    table: trip_no, technique, stints, hours, rod_hours, parts_rod_hours, tally (NaN where none was typed),
    on_rows, landed, kept, released, unknown, missed (NaN unless every stint says), in_rates, reason.
    surplus: trip_no -> fish tallied beyond all fish on rows.
    """

    table: pd.DataFrame
    surplus: pd.Series


def make_pairs(stints: pd.DataFrame, fish: pd.DataFrame, trips: pd.DataFrame) -> Pairs:
    """Bring effort and catch together by trip and technique; the larger of tally and rows is landed."""
    keys = ["trip_no", "technique"]
    effort = _effort_by_pair(stints)
    on_rows = _fish_by(fish[fish["counted"] & (fish["technique"] != "")], keys)
    pairs = effort.join(on_rows, how="outer")
    pairs["reason"] = pairs["reason"].astype(object).fillna("no_stint")
    pairs[["stints", *FATES, "on_rows"]] = pairs[["stints", *FATES, "on_rows"]].fillna(0.0)
    pairs["landed"] = np.maximum(pairs["tally"].fillna(0.0), pairs["on_rows"])
    pairs["unknown"] = pairs["landed"] - pairs["kept"] - pairs["released"]
    bare = _fish_by(fish[fish["counted"] & (fish["technique"] == "")], ["trip_no"])
    left, surplus = _leftovers(pairs, bare)
    table = pd.concat([pairs.reset_index(), left], ignore_index=True)
    return Pairs(_with_rates(table, trips), surplus)


def _effort_by_pair(stints: pd.DataFrame) -> pd.DataFrame:
    unusable = stints["reason"] != ""
    grouped = stints.assign(
        stints=1,
        parts_rod_hours=stints["rod_hours"].where(stints["timing"] == "parts", 0.0),
        missing=stints["missed"].isna(),
        unusable=unusable,
    ).groupby(["trip_no", "technique"])
    effort = ["hours", "rod_hours", "parts_rod_hours"]
    made = grouped[["stints", *effort, "missed", "missing", "unusable"]].sum()
    # Text has no quick maximum: only the few stints without usable time are looked at.
    reasons = stints.loc[unusable].groupby(["trip_no", "technique"])["reason"].max()
    made["reason"] = reasons.reindex(made.index).astype(object).fillna("")
    made["tally"] = grouped["landed"].sum(min_count=1)
    made["missed"] = made["missed"].where(made["missing"] == 0)
    made[effort] = made[effort].where(made["unusable"] == 0)
    return made.drop(columns=["missing", "unusable"])


def _fish_by(fish: pd.DataFrame, keys: list[str]) -> pd.DataFrame:
    by_fate = {fate: fish["fish"].where(fish["fate"] == fate, 0.0) for fate in FATES}
    columns = fish[keys].assign(on_rows=fish["fish"], **by_fate)
    return columns.groupby(keys).sum()


def _leftovers(pairs: pd.DataFrame, bare: pd.DataFrame) -> tuple[pd.DataFrame, pd.Series]:
    """Return the fish without a technique, one row a trip, and the surplus of tallies by trip.

    On a trip with tallies such fish describe fish already tallied: only what goes beyond the tallies is
    landed on their row, while their fates are, so that a trip's kept and released are those of its rows.
    """
    tallied_rows = pairs.assign(tallies=pairs["tally"].notna())
    by_trip = tallied_rows.groupby("trip_no")[["landed", "on_rows", "tallies"]].sum()
    trips = by_trip.join(bare["on_rows"].rename("bare"), how="outer").fillna(0.0)
    tallied = trips["tallies"] > 0
    room = trips["landed"] - trips["on_rows"]
    beyond = (trips["bare"] - room).clip(lower=0.0).where(tallied, trips["bare"])
    surplus = (room - trips["bare"].where(tallied, 0.0)).clip(lower=0.0)
    held = np.where(beyond[bare.index] > 0, "beyond_tally", "described")
    table = (
        bare[["on_rows", "kept", "released"]]
        .reset_index()
        .assign(
            technique="",
            stints=0.0,
            landed=beyond[bare.index].to_numpy(),
            reason=np.where(tallied[bare.index], held, "no_technique"),
        )
    )
    table["unknown"] = table["landed"] - table["kept"] - table["released"]
    return table, surplus


def _with_rates(table: pd.DataFrame, trips: pd.DataFrame) -> pd.DataFrame:
    of_trip = trips.set_index("trip_no")[["fished", "in_rates", "boat_hours"]].reindex(table["trip_no"])
    fished, finished = of_trip["fished"].to_numpy(), of_trip["in_rates"].to_numpy()
    reason = table["reason"].where(fished, "not_fished")
    reason = reason.where(finished | ~fished, "not_finished")
    made = table.assign(
        log=0, reason=reason, in_rates=reason == "", boat_hours=of_trip["boat_hours"].to_numpy()
    )
    return made.sort_values(["trip_no", "technique"], ignore_index=True)


def fish_identity(fish: pd.DataFrame, pairs: Pairs) -> pd.DataFrame:
    """Return where all fish went: reason ("" for in the rates), fish; the surplus of tallies is fish too.

    Fish on used rows of Catch + surplus of tallies = fish in rates + fish outside rates, by reason; asserted.
    """
    went = pairs.table.groupby("reason")["landed"].sum()
    went["not_counted"] = fish.loc[~fish["counted"], "fish"].sum()
    rows, surplus = fish["fish"].sum(), pairs.surplus.sum()
    if not np.isclose(rows + surplus, went.sum(), rtol=0, atol=1e-6):
        raise AssertionError(f"fish lost: {rows} on rows + {surplus} tallied, {went.sum()} accounted for")
    return went[went > 0].rename_axis("reason").rename("fish").reset_index()
