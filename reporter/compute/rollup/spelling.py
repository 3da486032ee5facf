"""One spelling for a name that many guides typed."""

from collections.abc import Iterable

from reporter.schema.log import folded


def one_spelling(names: Iterable[str]) -> dict[str, str]:
    """Return name -> one of the spellings of those that differ from it in case, blanks and signs alone."""
    spelled = sorted(set(names))
    first: dict[str, str] = {}
    for name in spelled:
        first.setdefault(folded(name) or name, name)
    return {name: first[folded(name) or name] for name in spelled}
