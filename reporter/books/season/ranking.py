"""Which technique is the best as fished, and how sure that is."""

from collections.abc import Sequence

from reporter.books.blocks import Cell, Field, Line, Table, Text
from reporter.books.season.numbers import live
from reporter.books.season.techniques_behind import NAME as BEHIND
from reporter.compute.ranking import Ranking
from reporter.schema.thresholds import CONTENDER, MIN_OWN_TRIPS, MIN_SHRUNKEN_TECHNIQUES

_NOTE = (
    "Steadied: a technique with little record is drawn towards the rate of all. The chance is that of really "
    f"having the highest rate, as fished; it does not say better. Grey: fewer than {MIN_OWN_TRIPS} trips."
)


def _behind(key: str) -> str:
    return f"INDEX({{steadied.{key}}},MATCH({{row.no}},{{steadied.technique_no}},0))"


def ranking_sentence(ranking: Ranking) -> str:
    """Return what the record can say of the best technique."""
    table = ranking.table
    if not ranking.offered:
        return f"No ranking: it takes {MIN_SHRUNKEN_TECHNIQUES} techniques with effort to steady their rates."
    if not ranking.detectable:
        return "No detectable difference between your techniques: their rates differ no more than by chance."
    if ranking.leader:
        chance = float(table.loc[table["technique"] == ranking.leader, "probability_best"].iloc[0])
        ahead = "the clear leader" if ranking.word == "clear" else "ahead, not settled"
        sure = f"{round(100 * chance)} %"
        return f"As fished, {ranking.leader} is {ahead}: a chance of {sure} that its rate is really highest."
    known = table[table["contender"] & (table["trips"] >= MIN_OWN_TRIPS)]["technique"].tolist()
    names = f": {', '.join(known)}" if known else ""
    least = f"{round(100 * CONTENDER)} %"
    return f"As fished, too close to call between those with a chance of {least} or more{names}."


def ranking_blocks(ranking: Ranking) -> tuple[Text | Table, ...]:
    """Return the sentence, and the table of steadied rates where it tells techniques apart."""
    table = ranking.table
    behind = BEHIND if len(table) else ""
    heading = Line("Which is your best, as fished", "heading", behind)
    sentence = Text((heading, Line(ranking_sentence(ranking))))
    if not (ranking.offered and ranking.detectable):
        return (sentence,)
    columns: dict[str, Sequence[Cell]] = {
        "no": table["technique_no"].tolist(),
        "technique": table["technique"].tolist(),
        "trips": live(_behind("trips"), table["trips"]),
        "rod_hours": live(_behind("rod_hours"), table["rod_hours"]),
        "rate": live(_behind("rate"), table["fish_per_rod_hour"]),
        "steadied": live(_behind("steadied"), table["shrunken_rate"]),
        "chance": table["probability_best"].tolist(),
    }
    fields = (
        Field("no", "No.", "plain"),
        Field("technique", "Technique"),
        Field("trips", "Trips", "whole"),
        Field("rod_hours", "Rod-hours", "one"),
        Field("rate", "Fish per rod-hour", "two"),
        Field("steadied", "Steadied for small samples", "two"),
        Field("chance", "Chance it is really your best", "share"),
    )
    grey = (table["trips"] < MIN_OWN_TRIPS).tolist()
    return sentence, Table("ranking", fields, columns, note=_NOTE, grey=grey)
