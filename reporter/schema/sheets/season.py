"""Season: one row is one setting. Each setting is described like a column."""

from reporter.schema.column import Column, Sheet
from reporter.schema.sheets.catch import FATES
from reporter.schema.sheets.trips import SAME_AS_YES_NO, YES_NO
from reporter.schema.species import BLACK_BASS

SEASON = Sheet(
    "season",
    "Season",
    "a setting",
    "units, dates, what counts",
    columns=(
        Column("setting", "Setting", "key", "What is set.", required=True, example="Units"),
        Column("value", "Value", "text", "Your answer. Blank is fine."),
    ),
)

SETTINGS: tuple[Column, ...] = (
    Column(
        "guide",
        "Guide or outfit",
        "text",
        "Your name as the report and your clients' copies print it.",
        example="An example outfit",
        audience="client",
    ),
    Column("guide_code", "Guide code", "text", "A short code for roll-ups of several guides.", example="G01"),
    Column("season_name", "Season name", "text", "What the report calls it.", example="Season 2026"),
    Column(
        "first_day",
        "First day",
        "date",
        "First day of the season; earlier trips are set aside.",
        example="2026-01-01",
    ),
    Column(
        "last_day",
        "Last day",
        "date",
        "Last day of the season; later trips are set aside.",
        example="2026-12-31",
    ),
    Column("as_of", "As-of date", "date", "The day you made this log up to; later dates are mistakes."),
    Column(
        "units",
        "Units",
        "choice",
        "us or metric: decides for headings and cells that do not say.",
        allowed=("us", "metric"),
        same_as={"imperial": "us", "english": "us", "si": "metric"},
        example="us",
        example_metric="metric",
    ),
    Column(
        "time_zone",
        "Time zone",
        "text",
        "As America/Chicago. Needed for light and hourly weather.",
        example="America/Chicago",
    ),
    Column(
        "latitude",
        "Latitude",
        "number",
        "Degrees, south negative. Needed for light and front days.",
        possible=(-90, 90),
        example=36,
        example_metric=45,
    ),
    Column(
        "longitude", "Longitude", "number", "Degrees, west negative. Needed for light.", possible=(-180, 180)
    ),
    Column(
        "species_counted",
        "Species counted",
        "names",
        "What Landed and the rates count, with ; between. Blank: every species.",
        example="black bass",
    ),
    Column(
        "bass_means", "Bass means", "species", "What the bare word bass stands for.", example=BLACK_BASS.name
    ),
    Column(
        "fate_if_blank",
        "Fate if blank",
        "choice",
        "What a blank Fate means: kept or released. Blank: not known.",
        allowed=FATES,
        same_as={"release": "released"},
        example="released",
    ),
    Column(
        "rods_per_angler",
        "Rods per angler",
        "count",
        "Rods each angler fishes at once.",
        possible=(1, 10),
        example=1,
    ),
    Column(
        "big_fish_mm",
        "Big fish from",
        "number",
        "From which length a fish is a big one.",
        quantity="fish length",
        possible=(20.0, 2000.0),
        example=18,
        example_metric=45,
    ),
    Column("usual_start", "Usual start", "time", "Serves where a trip's Start is blank.", example="06:30"),
    Column("usual_end", "Usual end", "time", "Serves where a trip's End is blank.", example="11:00"),
    Column(
        "all_measured",
        "All fish measured",
        "choice",
        "yes if you measure every fish.",
        allowed=YES_NO,
        same_as=SAME_AS_YES_NO,
        example="no",
    ),
    Column(
        "barometer",
        "Barometer",
        "choice",
        "sea level if it is set like the forecast's, absolute if not.",
        allowed=("sea level", "absolute"),
        example="sea level",
    ),
    Column(
        "date_order",
        "Date order",
        "choice",
        "How to read a date typed as text, as 03/04/2026.",
        allowed=("month first", "day first"),
        same_as={"mdy": "month first", "dmy": "day first"},
        example="month first",
        example_metric="day first",
    ),
    Column(
        "decimal_mark",
        "Decimal mark",
        "choice",
        "How to read a number typed as text, as 4,5.",
        allowed=("point", "comma"),
        same_as={".": "point", ",": "comma", "dot": "point"},
        example="point",
    ),
    Column(
        "weight_point",
        "Weight point",
        "choice",
        "What 4.12 lb means: pounds (and a part of one) or ounces (4 lb 12 oz).",
        allowed=("pounds", "ounces"),
        same_as={"decimal": "pounds", "oz": "ounces", "pounds.ounces": "ounces", "lb.oz": "ounces"},
    ),
    Column("thanks", "Thank-you line", "text", "Closes a client's copy.", audience="client"),
    Column("contact", "Contact line", "text", "How a client books again.", audience="client"),
)
