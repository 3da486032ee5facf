"""One name for what several logs call differently: techniques and waters."""

from collections.abc import Sequence

from reporter.compute.season import Season
from reporter.compute.spellings import spellings
from reporter.schema.log import folded

Names = dict[str, str]
"""A log's name -> the name in the common record."""


def technique_names(seasons: Sequence[Season]) -> list[Names]:
    """Return for each log its techniques with their names in the common record."""
    return _one_name(seasons, "techniques", "technique", [_techniques(season) for season in seasons])


def water_names(seasons: Sequence[Season]) -> list[Names]:
    """Return for each log its waters with their names in the common record."""
    return _one_name(seasons, "waters", "water", [season.waters for season in seasons])


def _techniques(season: Season) -> list[str]:
    names: list[str] = season.techniques["technique"].tolist()
    return names


def _one_name(
    seasons: Sequence[Season], sheet: str, column: str, names: Sequence[Sequence[str]]
) -> list[Names]:
    """Take names that a later log spells alike, or says under Also called, as its own spells them.

    Two names of one log stay two.
    """
    spelled: dict[str, str] = {}  # by the later logs, folded -> the name in the common record
    made: list[Names] = []
    for season, own in zip(reversed(seasons), reversed(names), strict=True):
        every = spellings(season.log, sheet, column, own)
        found = _found(own, every, spelled)
        spelled = {spelling: found[name] for spelling, name in every.items() if name in found} | spelled
        made.insert(0, found)
    return made


def _found(own: Sequence[str], every: dict[str, str], spelled: dict[str, str]) -> Names:
    """Return the names of one log: by their own spelling first, then by what they are also called."""
    common = {folded(name): name for name in spelled.values()}
    found = {name: common[folded(name)] for name in own if folded(name) in common}
    for name in own:
        also = [folded(name), *(spelling for spelling, of in every.items() if of == name)]
        free = (spelled[spelling] for spelling in also if spelling in spelled)
        found.setdefault(name, next((other for other in free if other not in found.values()), name))
    return {name: found[name] for name in own}
