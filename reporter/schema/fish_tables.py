"""The tables of fish and their sizes that `--tables` writes."""

from reporter.schema.csv_table import CsvField, CsvTable

_SPECIES = CsvField("species", "string", "Common name.")
_CODE = CsvField("species_code", "string", "House code of the species.")
_LOW = "Lower end of the range the record supports (95 %); empty on a single trip."
_HIGH = "Upper end of that range."
_CLASS = CsvField(
    "class_no",
    "integer",
    "Length class: 0 under stock length; from stock (1), quality, preferred, memorable, trophy (5) on.",
)
_BIG_RATE = "big fish per 10 rod-hours"

SPECIES_TABLE = CsvTable(
    "species",
    "a species on rows of Catch that are used",
    (
        _SPECIES,
        _CODE,
        CsvField("counted", "boolean", "Whether the rates count it."),
        CsvField("fish", "number", "Fish on rows of Catch; tallies name no species."),
        CsvField("kept", "number", "Of them kept."),
        CsvField("released", "number", "Of them released."),
        CsvField("fate_unknown", "number", "Of them neither, as far as the log says."),
        CsvField("measured", "number", "Of them measured."),
        CsvField("weighed", "number", "Of them weighed, each on a row of its own."),
        CsvField("longest_mm", "number", "The longest.", "mm"),
        CsvField("longest_estimated", "boolean", "Whether that is an estimate."),
        CsvField("heaviest_g", "number", "The heaviest with a row of its own.", "g"),
        CsvField("heaviest_estimated", "boolean", "Whether that is an estimate."),
    ),
)

BEST_FISH = CsvTable(
    "best_fish",
    "one of the season's longest fish of the species counted, the longest first",
    (
        CsvField("row", "integer", "Row of Catch."),
        CsvField("trip", "string", "The trip's number as typed."),
        CsvField("date", "date", "The day it started."),
        CsvField("water", "string", "Water."),
        CsvField("technique", "string", "Technique, under its one spelling."),
        _SPECIES,
        _CODE,
        CsvField("fish", "number", "How many the row stands for."),
        CsvField("length_mm", "number", "Total length.", "mm"),
        CsvField("weight_g", "number", "Weight.", "g"),
        CsvField("measured", "string", "measured, estimated, or empty."),
        CsvField("fate", "string", "kept, released or unknown."),
    ),
)

SIZE_STRUCTURE = CsvTable(
    "size_structure",
    "a species with published length categories, of trips that were fished",
    (
        _SPECIES,
        _CODE,
        CsvField("caught", "number", "Fish on rows of Catch."),
        CsvField("may_be_more", "number", "Fish tallied beyond them, or without a kind of bass."),
        CsvField("measured", "number", "Fish measured."),
        CsvField("weighed", "number", "Fish weighed."),
        CsvField("stock_fish", "number", "Measured fish of stock length or longer."),
        CsvField("trips", "integer", "Trips with such fish."),
        CsvField("why", "string", "Why no PSD is given: few_stock, few_measured; empty where one is."),
    ),
)

LENGTH_CLASSES = CsvTable(
    "length_classes",
    "a length class of a species with a PSD, which is that of angling",
    (
        _SPECIES,
        _CODE,
        _CLASS,
        CsvField("fish", "number", "Measured fish in the class."),
        CsvField("stock_fish", "number", "Measured fish of stock length or longer."),
        CsvField("trips", "integer", "Trips with such fish."),
        CsvField("share", "number", "Fish over stock_fish, 0 to 1."),
        CsvField("low", "number", "Lower end of a range that holds for all classes of the species (95 %)."),
        CsvField("high", "number", _HIGH),
        CsvField("fish_from", "number", "Measured fish in the class or above it."),
        CsvField(
            "psd",
            "number",
            "fish_from per 100 stock_fish: PSD (class 2), PSD-P, PSD-M, PSD-T; empty for class 1.",
        ),
        CsvField("psd_low", "number", _LOW),
        CsvField("psd_high", "number", _HIGH),
    ),
)

RELATIVE_WEIGHT = CsvTable(
    "relative_weight",
    "a length class of a species with enough fish both measured and weighed",
    (
        _SPECIES,
        _CODE,
        _CLASS,
        CsvField("fish", "number", "Fish both measured and weighed."),
        CsvField("trips", "integer", "Trips on which they were caught."),
        CsvField("mean", "number", "Mean relative weight; 100 is a plump fish of its length."),
        CsvField("low", "number", _LOW),
        CsvField("high", "number", _HIGH),
    ),
)

BIG_FISH = CsvTable(
    "big_fish",
    "a technique, where Season says from which length a fish is a big one",
    (
        CsvField("technique", "string", "Technique, under its one spelling."),
        CsvField("style", "string", "moving, slow or not given."),
        CsvField("trips", "integer", "Trips on which it was fished, in the rates."),
        CsvField("rod_hours", "number", "Rods x hours fished.", "rod-hour"),
        CsvField("fish", "number", "Fish landed, of the species counted."),
        CsvField("sized", "number", "Of them with a length, measured or estimated."),
        CsvField("big", "number", "Of them big."),
        CsvField("big_per_10_rod_hours", "number", "10 x big over effort.", _BIG_RATE),
        CsvField("low", "number", "Lower end of the range the record supports (95 %).", _BIG_RATE),
        CsvField("high", "number", _HIGH, _BIG_RATE),
        CsvField("interval_rule", "string", "What the range rests on, as in techniques."),
    ),
)

LENGTH_FREQUENCY = CsvTable(
    "length_frequency",
    "a step of length of a species with enough measured fish",
    (
        _SPECIES,
        _CODE,
        CsvField("length_from", "number", "Its lower end, in the unit beside it."),
        CsvField("unit", "string", "in (steps of 1) or cm (steps of 2)."),
        CsvField("fish", "number", "Measured fish from there to the next step."),
    ),
)

FISH_TABLES: tuple[CsvTable, ...] = (
    SPECIES_TABLE,
    BEST_FISH,
    SIZE_STRUCTURE,
    LENGTH_CLASSES,
    RELATIVE_WEIGHT,
    BIG_FISH,
    LENGTH_FREQUENCY,
)
