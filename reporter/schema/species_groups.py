"""Kinds of fish that a word leaves open: which species it may mean."""

from reporter.schema.species import BLACK_BASS, SPECIES

OPEN_KINDS: dict[str, frozenset[str]] = {
    BLACK_BASS.code: frozenset(kind.code for kind in SPECIES if kind.black_bass and kind is not BLACK_BASS),
    "CRA": frozenset({"BLC", "WHC"}),
    "SUN": frozenset({"BLG", "RES", "GSF", "PKS", "RBS", "WAR"}),
}
"""House code of a kind not told apart -> the species that it may be."""


def with_members(code: str) -> frozenset[str]:
    """Return a species, or a kind not told apart with every species that it may be."""
    return OPEN_KINDS.get(code, frozenset()) | {code}
