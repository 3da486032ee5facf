"""Species: house code, common name and the words that guides type for them.

Common names follow the capitals of the American Fisheries Society's list, lower case in running text.
Numbers and codes of public lists join them where a filing needs them.
"""

from typing import NamedTuple


class Species(NamedTuple):
    """A kind of fish: house code, common name, other words for it, whether it is a black bass."""

    code: str
    name: str
    also: tuple[str, ...] = ()
    black_bass: bool = False


BLACK_BASS = Species("BLB", "black bass, unspecified", ("black bass", "black bass unspecified"), True)

SPECIES: tuple[Species, ...] = (
    Species(
        "LMB", "largemouth bass", ("largemouth", "large mouth", "large mouth bass", "lm", "lm bass"), True
    ),
    Species(
        "SMB", "smallmouth bass", ("smallmouth", "small mouth", "small mouth bass", "sm", "smallie"), True
    ),
    Species("SPB", "spotted bass", ("spot", "spots", "spotted", "kentucky bass"), True),
    Species("ALB", "Alabama bass", ("alabama spotted bass",), True),
    Species("FLB", "Florida bass", (), True),
    Species("GUB", "Guadalupe bass", (), True),
    Species("REB", "redeye bass", ("redeye",), True),
    Species("SHB", "shoal bass", (), True),
    Species("SUB", "Suwannee bass", (), True),
    BLACK_BASS,
    Species("BLG", "bluegill", ("gill", "gills")),
    Species("RES", "redear sunfish", ("redear", "shellcracker")),
    Species("GSF", "green sunfish", ()),
    Species("PKS", "pumpkinseed", ()),
    Species("RBS", "redbreast sunfish", ("redbreast",)),
    Species("WAR", "warmouth", ()),
    Species("SUN", "sunfish, unspecified", ("sunfish", "bream", "panfish")),
    Species("RKB", "rock bass", ()),
    Species("BLC", "black crappie", ()),
    Species("WHC", "white crappie", ()),
    Species("CRA", "crappie, unspecified", ("crappie", "crappies")),
    Species("WAE", "walleye", ("wally",)),
    Species("SAR", "sauger", ()),
    Species("SAE", "saugeye", ()),
    Species("YEP", "yellow perch", ("perch",)),
    Species("NOP", "northern pike", ("pike", "northern")),
    Species("MUE", "muskellunge", ("muskie", "musky")),
    Species("TGM", "tiger muskellunge", ("tiger muskie", "tiger musky")),
    Species("CHP", "chain pickerel", ()),
    Species("RFP", "redfin pickerel", ()),
    Species("GRP", "grass pickerel", ()),
    Species("CCF", "channel catfish", ("channel cat",)),
    Species("BCF", "blue catfish", ("blue cat",)),
    Species("FCF", "flathead catfish", ("flathead", "flathead cat")),
    Species("BUL", "bullhead, unspecified", ("bullhead",)),
    Species("RBT", "rainbow trout", ("rainbow", "steelhead")),
    Species("BNT", "brown trout", ("brown",)),
    Species("BKT", "brook trout", ("brookie",)),
    Species("CUT", "cutthroat trout", ("cutthroat", "cutt")),
    Species("LKT", "lake trout", ("laker",)),
    Species("STB", "striped bass", ()),
    Species("WHB", "white bass", ()),
    Species("YLB", "yellow bass", ()),
    Species("SBH", "hybrid striped bass", ("wiper", "hybrid striper")),
    Species("FRD", "freshwater drum", ("drum", "sheepshead")),
    Species("CAP", "common carp", ("carp",)),
    Species("GAR", "gar, unspecified", ("gar", "longnose gar", "spotted gar")),
    Species("BOW", "bowfin", ("mudfish", "dogfish")),
    Species("BUF", "buffalo, unspecified", ("buffalo",)),
)

TWO_MEANINGS: dict[str, tuple[str, ...]] = {
    "bass": ("largemouth", "smallmouth", "spotted", "white", "striped"),
    "trout": ("rainbow trout", "brown trout", "brook trout", "lake trout"),
    "cat": ("channel catfish", "blue catfish", "flathead catfish"),
    "cats": ("channel catfish", "blue catfish", "flathead catfish"),
    "catfish": ("channel catfish", "blue catfish", "flathead catfish"),
    "pickerel": ("chain pickerel", "redfin pickerel", "grass pickerel", "walleye"),
    "striper": ("striped bass", "hybrid striped bass", "white bass"),
    "stripers": ("striped bass", "hybrid striped bass", "white bass"),
}
"""Words with more than one meaning, and what to write instead."""

NO_FISH = frozenset({"none", "no fish", "nothing", "blank", "blanked", "zero", "nil", "skunked", "0"})
"""What a Species cell may say on a day without a fish."""


def only_black_bass(counted: frozenset[str] | None) -> bool:
    """Whether the species counted (None: every one) are all black bass."""
    return counted is not None and all(BY_CODE[code].black_bass for code in counted)


def species_words() -> dict[str, Species]:
    """Return every accepted word, case-folded with single spaces, with its species."""
    words: dict[str, Species] = {}
    for kind in SPECIES:
        for word in (kind.name, kind.code, *kind.also):
            words[word.casefold()] = kind
    return words


BY_CODE: dict[str, Species] = {kind.code: kind for kind in SPECIES}

BLACK_BASS_CODES = frozenset(kind.code for kind in SPECIES if kind.black_bass)
