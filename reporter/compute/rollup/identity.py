"""Whose log it is, as far as the logs say: by Guide code, without one by Guide or outfit.

What is told rests on the number of guides, so that it must never come out too high: a log that says neither
may be any guide's, and so may one without a code under a name that several codes have. Such a log counts as
no guide: its figures are in the totals, and whatever is told has guides enough without it.
"""

from collections import defaultdict
from collections.abc import Sequence
from typing import NamedTuple

from reporter.schema.log import folded, folded_code


class Said(NamedTuple):
    """What a log says of its guide: the log's name, Guide code and Guide or outfit, "" where not written."""

    log: str
    code: str
    guide: str


def guide_keys(logs: Sequence[Said]) -> dict[str, str]:
    """Return log -> what makes two logs one guide's; "" where it is not known whose it is.

    A log without a code under the name of a log with one is that guide's.
    """
    codes: defaultdict[str, set[str]] = defaultdict(set)
    for said in logs:
        if folded_code(said.code):
            codes[folded(said.guide)].add(folded_code(said.code))
    return {said.log: _key(folded_code(said.code), folded(said.guide), codes) for said in logs}


def _key(code: str, name: str, codes: defaultdict[str, set[str]]) -> str:
    if code:
        return f"code {code}"
    if not name or len(codes[name]) > 1:
        return ""
    return f"code {next(iter(codes[name]))}" if codes[name] else f"name {name}"
