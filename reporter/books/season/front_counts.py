"""Live counts of dates over the sheet Front days by date."""

from reporter.books.blocks import Live
from reporter.books.season.front_words import SOURCES, VERDICTS
from reporter.compute.fronts.agreement import Agreement
from reporter.schema.fronts import CALL_NO, CALL_YES, DAYS, FLAGGED, Source


def _is(column: str, *words: str) -> str:
    """Return the condition that a cell holds one of our own words."""
    return "(" + "+".join(f'({{front_day.{column}}}="{word}")' for word in words) + ")"


_BEHIND = _is("verdict", *(VERDICTS[verdict] for verdict in FLAGGED))
_FISHED = _is("fished", "yes")
_NO_DATA = _is("verdict", VERDICTS["not_enough_data"])


def _dates(*conditions: str) -> str:
    return f"SUMPRODUCT({'*'.join(conditions)})"


def flagged_dates(count: int) -> Live:
    """Return the dates behind a front."""
    return Live(_dates(_BEHIND), count)


def fished_flagged_dates(count: int) -> Live:
    """Return the fished dates behind a front."""
    return Live(_dates(_FISHED, _BEHIND), count)


def unknown_dates(count: int) -> Live:
    """Return the fished dates of which nobody can tell."""
    return Live(_dates(_FISHED, _NO_DATA), count)


def dates_by(source: Source, count: int) -> Live:
    """Return the dates that a kind of source decided; its station may stand behind it in the cell."""
    word = SOURCES[source]
    return Live(_dates(f'(LEFT({{front_day.source}},{len(word)})="{word}")*1'), count)


def compared_dates(found: Agreement) -> dict[str, list[Live]]:
    """Return call against verdict, two by two: columns tool_yes and tool_no, rows call yes and call no."""
    calls = {"yes": _is("call", *CALL_YES), "no": _is("call", *CALL_NO)}
    tools = {"tool_yes": _BEHIND, "tool_no": _is("verdict", VERDICTS["no"])}
    counts = {
        "tool_yes": (found.both_yes, found.tool_only),
        "tool_no": (found.call_only, found.both_no),
    }
    not_passing = f'({{front_day.day}}<>"{DAYS["passing"]}")'
    return {
        column: [
            Live(_dates(_FISHED, calls[call], tool, not_passing), count)
            for call, count in zip(calls, counts[column], strict=True)
        ]
        for column, tool in tools.items()
    }
