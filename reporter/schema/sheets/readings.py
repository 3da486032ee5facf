"""The columns of a reading, shared by Trips, Conditions and Weather."""

from reporter.schema.column import Column

CLARITY = ("clear", "lightly stained", "stained", "muddy")
SKY = ("clear", "partly cloudy", "mostly cloudy", "overcast", "rain", "snow", "fog")
WATER_LEVEL = ("low", "normal", "high", "falling", "steady", "rising")

WATER_TEMP = Column(
    "water_temp_c",
    "Water temp",
    "number",
    "Surface temperature when you started.",
    quantity="temperature",
    possible=(-10.0, 45.0),
    usual=(0.0, 36.0),
    example=58,
    example_metric=14,
    audience="client",
    also=("Water temperature", "Surface temp"),
)
CLEARNESS = Column(
    "clarity",
    "Clarity",
    "choice",
    "How clear the water was.",
    allowed=CLARITY,
    same_as={
        "gin clear": "clear",
        "light stain": "lightly stained",
        "slightly stained": "lightly stained",
        "stain": "stained",
        "murky": "muddy",
        "dirty": "muddy",
        "mud": "muddy",
    },
    example="stained",
    audience="client",
    also=("Water clarity",),
)
SKY_SEEN = Column(
    "sky",
    "Sky",
    "choice",
    "The sky for most of the time.",
    allowed=SKY,
    same_as={
        "sunny": "clear",
        "sun": "clear",
        "bluebird": "clear",
        "bright": "clear",
        "partly sunny": "partly cloudy",
        "mixed": "partly cloudy",
        "cloudy": "overcast",
        "grey": "overcast",
        "gray": "overcast",
        "rainy": "rain",
        "showers": "rain",
        "foggy": "fog",
    },
    example="overcast",
    audience="client",
)
WIND_FROM = Column(
    "wind_from_deg",
    "Wind from",
    "compass",
    "Where the wind came from: N, NW, 315; or calm, light, variable.",
    possible=(0.0, 360.0),
    example="NW",
    audience="client",
    also=("Wind", "Wind direction", "Wind dir"),
)
WIND_SPEED = Column(
    "wind_speed_ms",
    "Wind speed",
    "number",
    "About how hard it blew.",
    quantity="speed",
    possible=(0.0, 60.0),
    usual=(0.0, 25.0),
    example=8,
    example_metric=13,
    audience="client",
)
LEVEL = Column(
    "water_level",
    "Water level",
    "choice",
    "Low, normal, high; or falling, steady, rising.",
    allowed=WATER_LEVEL,
    same_as={"stable": "steady", "dropping": "falling", "up": "rising", "down": "falling"},
    example="steady",
    audience="client",
    also=("Level",),
)
BAROMETER = Column(
    "barometer_hpa",
    "Barometer",
    "number",
    "What the barometer showed. Use one instrument, at one place.",
    quantity="pressure",
    possible=(600.0, 1100.0),
    usual=(940.0, 1060.0),
    example=29.92,
    example_metric=1013,
    also=("Pressure", "Baro"),
)
AIR_TEMP = Column(
    "air_temp_c",
    "Air temp",
    "number",
    "Air temperature in the shade.",
    quantity="temperature",
    possible=(-50.0, 55.0),
    usual=(-30.0, 45.0),
    example=62,
    example_metric=17,
    audience="client",
    also=("Air temperature",),
)
DEW_POINT = Column(
    "dew_point_c",
    "Dew point",
    "number",
    "From a weather report, if you have it.",
    quantity="temperature",
    possible=(-60.0, 35.0),
    usual=(-40.0, 30.0),
    example=51,
    example_metric=11,
    also=("Dewpoint",),
)
