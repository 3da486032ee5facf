"""Words by which guides head the columns of their own sheets, beside the headings that the log accepts.

Common usage, no source. They serve proposals only: nothing is read by them until a guide confirms it.
"""

HEADING_WORDS: dict[tuple[str, str], tuple[str, ...]] = {
    ("trips", "trip"): ("no", "number", "id", "trip code", "outing no", "log no", "#"),
    ("trips", "date"): ("when", "date fished", "date of trip"),
    ("trips", "water"): (
        "where",
        "location",
        "place",
        "lake river",
        "reservoir",
        "river",
        "venue",
        "fishery",
    ),
    ("trips", "start"): ("on water", "in", "from", "began", "time in", "time out of dock", "launch", "begin"),
    ("trips", "end"): ("off water", "out", "to", "finish", "finished", "time out", "stop", "quit"),
    ("trips", "anglers"): ("people", "guests", "pax", "party", "party size", "rods", "clients no", "heads"),
    ("trips", "client"): ("customer", "guest", "who", "names", "party name"),
    ("trips", "hours_fished"): ("hours", "hrs", "time fished", "length of trip", "duration", "total hours"),
    ("trips", "hours_off"): ("lunch", "break hours"),
    ("trips", "guide_fished"): ("did i fish", "i fished", "me fishing"),
    ("trips", "water_temp_c"): ("temp", "wtemp", "h2o temp", "surface", "water deg", "wt", "water"),
    ("trips", "clarity"): ("water colour", "water color", "vis", "visibility", "stain"),
    ("trips", "sky"): ("weather", "conditions", "cloud", "clouds", "cloud cover"),
    ("trips", "wind_from_deg"): ("wind", "wind dir", "wind direction"),
    ("trips", "wind_speed_ms"): ("wind mph", "mph", "wind strength"),
    ("trips", "water_level"): ("level", "pool", "flow", "lake level"),
    ("trips", "front_call"): ("front",),
    ("trips", "notes"): ("comment", "what happened", "memo", "other"),
    ("trips", "guide"): ("captain", "my name"),
    ("trips", "reach"): ("spot", "spots", "area", "stretch"),
    ("trips", "passengers"): ("aboard", "souls aboard", "on board"),
    ("effort", "technique"): ("lure", "bait", "lure type", "bait used", "what i threw", "rig", "caught with"),
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
    ),
    ("effort", "missed"): ("lost", "bites missed", "missed fish", "shaken off", "dropped"),
    ("effort", "colour"): ("lure colour", "bait color"),
    ("effort", "size"): ("lure size", "weight of lure"),
    ("effort", "cover"): ("structure", "where on the lake", "fished on"),
    ("effort", "depth_m"): ("fishing depth", "how deep"),
    ("catch", "species"): ("sp", "fish type", "type of fish", "what", "kind"),
    ("catch", "technique"): ("lure", "bait", "lure type", "bait used", "caught with", "rig", "on what"),
    ("catch", "count"): ("no", "quantity", "no of fish", "number of fish", "fish caught"),
    ("catch", "length_mm"): ("len", "size", "inches", "long", "how long"),
    ("catch", "weight_g"): ("wt", "lbs", "pounds", "weighed"),
    ("catch", "fate"): ("kept rel", "released", "kept", "c r", "kept?", "k r"),
    ("catch", "time"): ("time caught", "when", "caught at", "hour"),
    ("catch", "angler"): ("who", "who caught it", "client", "name"),
    ("catch", "kept"): ("harvested", "number kept", "taken"),
    ("catch", "released"): ("number released", "let go", "returned"),
    ("catch", "total"): ("total caught",),
    ("conditions", "trip"): ("trip no",),
    ("weather", "high_c"): ("max", "max temp", "high temp"),
    ("weather", "low_c"): ("min", "min temp", "low temp"),
    ("weather", "barometer_hpa"): ("pressure", "bar", "baro"),
    ("techniques", "technique"): ("lure", "bait"),
    ("techniques", "style"): ("speed", "moving or slow"),
    ("waters", "water"): ("place", "location"),
    ("clients", "name_on_summary"): ("full name", "client name"),
}
"""Sheet key, column key -> words."""

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

TECHNIQUE_WORDS = frozenset(
    {
        "jig",
        "jigs",
        "crank",
        "crankbait",
        "cranks",
        "worm",
        "worms",
        "rig",
        "spoon",
        "fly",
        "frog",
        "plug",
        "plugs",
        "plastics",
        "finesse",
        "bait",
        "minnow",
        "minnows",
        "spinner",
        "spinnerbait",
        "topwater",
        "swimbait",
        "grub",
        "craw",
        "shad",
        "blade",
        "popper",
        "buzzbait",
    }
)
"""Words one of which shows that a name of columns is a technique's, though not one of the usual ones."""

OVER_TECHNIQUES = ("technique", "method", "lure", "bait", "presentation", "rig", "tackle")
"""Words of a heading over several columns that says that each of these is a technique."""

HOUR_WORDS = frozenset({"hours", "hrs", "hr", "h"})
"""Of the words for time, those that say hours."""
