"""Words by which guides head the columns of their own sheets, beside the headings that the log accepts.

Common usage, no source. They serve proposals only: nothing is read by them until a guide confirms it.
"""

HEADING_WORDS: dict[tuple[str, str], tuple[str, ...]] = {
    ("trips", "trip"): ("no", "number", "id", "trip code", "outing no", "log no", "#"),
    ("trips", "date"): ("when", "date fished", "date of trip", "day of trip", "day fished", "dt"),
    ("trips", "water"): (
        "where",
        "location",
        "place",
        "lake river",
        "reservoir",
        "river",
        "venue",
        "fishery",
        "lake fished",
        "water fished",
        "water body",
        "lk",
    ),
    ("trips", "start"): ("on water", "in", "from", "began", "time in", "launch", "begin", "strt"),
    ("trips", "end"): (
        "off water",
        "out",
        "to",
        "finish",
        "finished",
        "time out",
        "stop",
        "stop time",
        "quit",
        "take out",
        "finish time",
    ),
    ("trips", "anglers"): (
        "people",
        "guests",
        "pax",
        "party",
        "party size",
        "rods",
        "clients no",
        "clients",
        "guests no",
        "heads",
        "ang",
    ),
    ("trips", "client"): ("customer", "guest", "who", "names", "party name"),
    ("trips", "hours_fished"): (
        "hours",
        "hrs",
        "time fished",
        "length of trip",
        "duration",
        "total hours",
        "total hrs",
        "hrs fished",
    ),
    ("trips", "hours_off"): ("lunch", "break hours"),
    ("trips", "clock"): (
        "time",
        "times",
        "hours",
        "time fished",
        "start end",
        "from to",
        "time in out",
        "in out",
    ),
    ("trips", "guide_fished"): ("did i fish", "i fished", "me fishing"),
    ("trips", "water_temp_c"): ("temp", "wtemp", "h2o temp", "surface", "water deg", "wt", "water", "h2o"),
    ("trips", "clarity"): ("water colour", "water color", "vis", "visibility", "stain", "clar"),
    ("trips", "sky"): ("weather", "conditions", "cloud", "clouds", "cloud cover"),
    ("trips", "wind_from_deg"): ("wind", "wind dir", "wind direction"),
    ("trips", "wind_speed_ms"): ("wind mph", "mph", "wind strength", "wind spd", "wind"),
    ("trips", "water_level"): ("level", "pool", "flow", "lake level"),
    ("trips", "front_call"): ("front",),
    ("trips", "notes"): ("comment", "what happened", "memo", "other"),
    ("trips", "guide"): ("captain", "my name"),
    ("trips", "reach"): ("spot", "spots", "area", "stretch"),
    ("trips", "passengers"): ("aboard", "souls aboard", "on board"),
    ("effort", "technique"): (
        "lure",
        "bait",
        "lure type",
        "lure used",
        "main lure",
        "bait used",
        "what i threw",
        "rig",
        "caught with",
    ),
    ("effort", "minutes"): ("time", "how long", "time on it", "hours", "hrs", "hours on it"),
    ("effort", "rods"): ("anglers on", "how many rods", "rods out"),
    ("effort", "landed"): (
        "total",
        "total fish",
        "boated",
        "in the boat",
        "count",
        "number caught",
        "no fish",
        "fish caught",
        "total caught",
        "total landed",
    ),
    ("effort", "missed"): ("lost", "bites missed", "missed fish", "shaken off", "dropped"),
    ("effort", "colour"): ("lure colour", "bait color"),
    ("effort", "size"): ("lure size", "weight of lure"),
    ("effort", "cover"): ("structure", "where on the lake", "fished on"),
    ("effort", "depth_m"): ("fishing depth", "how deep"),
    ("catch", "species"): ("sp", "fish type", "type of fish", "what", "kind"),
    ("catch", "technique"): (
        "lure",
        "bait",
        "lure type",
        "lure used",
        "bait used",
        "caught with",
        "rig",
        "on what",
    ),
    ("catch", "count"): (
        "no",
        "#",
        "quantity",
        "no of fish",
        "number of fish",
        "fish caught",
        "fish",
        "caught",
    ),
    ("catch", "length_mm"): ("len", "size", "inches", "long", "how long"),
    ("catch", "weight_g"): ("wt", "lbs", "pounds", "weighed"),
    ("catch", "fate"): ("kept rel", "released", "kept", "keep", "c r", "k r", "released kept"),
    ("catch", "time"): ("time caught", "when", "caught at", "hour"),
    ("catch", "angler"): ("who", "who caught it", "client", "name"),
    ("catch", "kept"): ("harvested", "number kept", "taken", "fish kept", "total kept", "kept fish", "keep"),
    ("catch", "released"): (
        "number released",
        "let go",
        "returned",
        "fish released",
        "total released",
        "released fish",
        "rel",
    ),
    ("catch", "total"): (
        "total",
        "total caught",
        "total fish",
        "total catch",
        "total bass",
    ),
    ("catch", "was_kept"): ("kept", "keep", "kept y n", "was it kept"),
    ("catch", "was_released"): ("released", "rel", "released y n", "let go", "put back"),
    ("conditions", "trip"): ("trip no",),
    ("weather", "high_c"): ("max", "max temp", "high temp"),
    ("weather", "low_c"): ("min", "min temp", "low temp"),
    ("weather", "barometer_hpa"): ("pressure", "bar", "baro"),
    ("techniques", "technique"): ("lure", "bait"),
    ("techniques", "style"): ("speed", "moving or slow", "moving slow", "slow or moving"),
    ("techniques", "also_called"): ("nickname", "short", "aka", "other names", "abbreviation", "code"),
    ("waters", "water"): ("place", "location"),
    ("clients", "name_on_summary"): ("full name", "client name", "name"),
}
"""Sheet key, column key -> words."""

SHARED_WORDS: dict[str, tuple[str, ...]] = {
    key: HEADING_WORDS["trips", key]
    for key in ("water_temp_c", "clarity", "wind_from_deg", "wind_speed_ms", "water_level")
}
"""Column key -> words for it on whatever sheet it stands."""

WEAK_WORDS = frozenset(
    {"no", "number", "#", "id", "in", "out", "from", "to", "who", "what", "when", "other", "name", "names"}
    | {
        "rods",
        "time",
        "hour",
        "size",
        "wt",
        "water",
        "kind",
        "count",
        "total",
        "front",
        "level",
        "short",
        "code",
    }
)
"""Words that head columns of several kinds: with them alone nothing is sure."""

MEASURES: dict[str, tuple[str, ...]] = {
    "minutes": ("hours", "hrs", "hr", "h", "minutes", "mins", "min", "time"),
    "landed": ("fish", "caught", "landed", "catch", "count", "#", "no", "number", "boated", "bass"),
    "missed": ("missed", "lost", "misses"),
    "rods": ("rods", "anglers"),
    "parts": ("parts", "share", "marks"),
    "hang_ups": ("snags", "hang-ups", "hangups"),
}
"""Column key of Effort -> words that stand beside a technique's name in the heading of such a column."""

FISH_MEASURES: dict[str, tuple[str, ...]] = {
    "kept": ("kept", "keep", "harvested", "k"),
    "released": ("released", "release", "rel", "returned", "r"),
    "total": ("total",),
    "count": ("caught", "fish", "count", "#", "no", "number", "landed"),
}
"""Meaning of a column of Catch -> words that stand beside a species in the heading of such a column."""

WORKED_OUT = frozenset(
    {"avg", "average", "mean", "best", "big", "biggest", "largest", "longest", "heaviest", "max", "per"}
)
"""Words of headings over what is worked out from other cells: the word beside them is not the column's."""

TECHNIQUE_STYLES: dict[str, str] = {
    **dict.fromkeys(
        ("crank", "crankbait", "spinner", "spinnerbait", "swimbait", "topwater", "buzzbait"), "moving"
    ),
    **dict.fromkeys(("squarebill", "lipless", "jerkbait", "popper", "moving"), "moving"),
    **dict.fromkeys(
        ("jig", "worm", "wacky", "texas", "carolina", "tube", "drop", "shaky", "finesse", "slow"), "slow"
    ),
    **dict.fromkeys(("grub", "craw", "creature", "lizard", "plastic"), "slow"),
    **dict.fromkeys(("bait", "blade", "fly", "frog", "minnow", "plug", "rig", "shad", "spoon", "stick"), ""),
}
"""Words one of which shows that a name is a technique's, though not one of the usual ones -> its style, where
the word gives that away."""

TECHNIQUE_WORDS = frozenset(form for word in TECHNIQUE_STYLES for form in (word, f"{word}s"))
"""The same words, alone and several."""

TECHNIQUE_SHORT: dict[str, str] = {
    "ds": "Drop shot",
    "jb": "Jerkbait",
    "cb": "Crankbait",
    "crk": "Crankbait",
    "sb": "Spinnerbait",
    "spin": "Spinnerbait",
    "tw": "Topwater",
    "cr": "Carolina rig",
    "tr": "Texas rig",
    "sh": "Shaky head",
}
"""Short forms, lower case -> the technique that they may mean: offered, never applied."""

OVER_TECHNIQUES = ("technique", "method", "lure", "bait", "presentation", "rig", "tackle")
"""Words of a heading over several columns that say that each of these is a technique."""

HOUR_WORDS = frozenset({"hours", "hrs", "hr", "h"})
"""Of the words for time, those that say hours."""
