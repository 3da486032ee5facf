"""Files of the climate archives of the United States."""

from reporter.schema.weather_files.form import TimeRule, WeatherColumn, WeatherFormat

_SUMMARIES = frozenset({"SOD", "SOM"})
_STANDARD = (TimeRule(("time",), "standard time"),)
_STATION = (
    WeatherColumn("station", ("station", "station_id")),
    WeatherColumn("station_name", ("name", "station_name")),
    WeatherColumn("elevation", ("elevation",), "m", missing=(9999.0, -999.9, -9999.0)),
)

LCD = WeatherFormat(
    name="LCD (Local Climatological Data)",
    recognised=(("date",), ("hourlydrybulbtemperature",), ("hourlywindspeed",)),
    columns=(
        *_STATION,
        WeatherColumn("time", ("date",)),
        WeatherColumn("report_type", ("report_type",)),
        WeatherColumn("temperature", ("hourlydrybulbtemperature",), "°F", "°C"),
        WeatherColumn("dew_point", ("hourlydewpointtemperature",), "°F", "°C"),
        WeatherColumn("humidity", ("hourlyrelativehumidity",), "%"),
        WeatherColumn("wind_from", ("hourlywinddirection",), "°"),
        WeatherColumn("wind_speed", ("hourlywindspeed",), "mph", "m/s"),
        WeatherColumn("altimeter", ("hourlyaltimetersetting",), "inHg", "hPa"),
        WeatherColumn("station_pressure", ("hourlystationpressure",), "inHg", "hPa"),
        WeatherColumn("sea_level", ("hourlysealevelpressure",), "inHg", "hPa"),
        WeatherColumn("cloud", ("hourlyskyconditions",)),
        WeatherColumn("report", ("rem",)),
    ),
    times=_STANDARD,
    us_or_metric=True,
    summaries=_SUMMARIES,
)

LCD_OLDER = WeatherFormat(
    name="LCD (Local Climatological Data, older headings)",
    recognised=(("date",), ("hourlydrybulbtempf",), ("hourlywindspeed",)),
    columns=(
        *_STATION,
        WeatherColumn("time", ("date",)),
        WeatherColumn("report_type", ("reporttpye", "reporttype", "report_type")),
        WeatherColumn("temperature", ("hourlydrybulbtempf",), "°F"),
        WeatherColumn("dew_point", ("hourlydewpointtempf",), "°F"),
        WeatherColumn("humidity", ("hourlyrelativehumidity",), "%"),
        WeatherColumn("wind_from", ("hourlywinddirection",), "°"),
        WeatherColumn("wind_speed", ("hourlywindspeed",), "mph"),
        WeatherColumn("altimeter", ("hourlyaltimetersetting",), "inHg"),
        WeatherColumn("station_pressure", ("hourlystationpressure",), "inHg"),
        WeatherColumn("sea_level", ("hourlysealevelpressure",), "inHg"),
        WeatherColumn("cloud", ("hourlyskyconditions",)),
    ),
    times=_STANDARD,
    summaries=_SUMMARIES,
)

ISD = WeatherFormat(
    name="ISD hourly (global-hourly)",
    recognised=(("date",), ("wnd",), ("tmp",), ("dew",), ("slp",)),
    columns=(
        *_STATION,
        WeatherColumn("time", ("date",)),
        WeatherColumn("report_type", ("report_type",)),
        WeatherColumn("temperature", ("tmp",), "°C", scale=0.1, part=0, quality=1, missing=(9999.0,)),
        WeatherColumn("dew_point", ("dew",), "°C", scale=0.1, part=0, quality=1, missing=(9999.0,)),
        WeatherColumn("wind_from", ("wnd",), "°", part=0, quality=1, missing=(999.0,)),
        WeatherColumn("wind_type", ("wnd",), part=2),
        WeatherColumn("wind_speed", ("wnd",), "m/s", scale=0.1, part=3, quality=4, missing=(9999.0,)),
        WeatherColumn("altimeter", ("ma1",), "hPa", scale=0.1, part=0, quality=1, missing=(99999.0,)),
        WeatherColumn("station_pressure", ("ma1",), "hPa", scale=0.1, part=2, quality=3, missing=(99999.0,)),
        WeatherColumn("sea_level", ("slp",), "hPa", scale=0.1, part=0, quality=1, missing=(99999.0,)),
        WeatherColumn("cloud", ("gf1",), part=0),
        WeatherColumn("report", ("rem",)),
    ),
    times=(TimeRule(("time",), "UTC"),),
    summaries=_SUMMARIES,
)

ISD_LITE = WeatherFormat(
    name="ISD-Lite",
    recognised=(),
    columns=(
        WeatherColumn("year", ("year",)),
        WeatherColumn("month", ("month",)),
        WeatherColumn("day", ("day",)),
        WeatherColumn("hour", ("hour",)),
        WeatherColumn("temperature", ("temperature",), "°C", scale=0.1, missing=(-9999.0,)),
        WeatherColumn("dew_point", ("dew point",), "°C", scale=0.1, missing=(-9999.0,)),
        WeatherColumn("sea_level", ("sea level pressure",), "hPa", scale=0.1, missing=(-9999.0,)),
        WeatherColumn("wind_from", ("wind direction",), "°", missing=(-9999.0,)),
        WeatherColumn("wind_speed", ("wind speed",), "m/s", scale=0.1, missing=(-9999.0,)),
        WeatherColumn("cloud", ("sky",)),
    ),
    times=(TimeRule(("year", "month", "day", "hour"), "UTC"),),
    delimiters=" ",
    pattern=r"\d{4} \d\d \d\d \d\d(?: +-?\d+){8}\s*$",
    implied=(
        "year",
        "month",
        "day",
        "hour",
        "temperature",
        "dew point",
        "sea level pressure",
        "wind direction",
        "wind speed",
        "sky",
        "rain in an hour",
        "rain in six hours",
    ),
    name_holds=r"\d{6}-\d{5}",
)

GHCNH = WeatherFormat(
    name="GHCNh",
    recognised=(("temperature",), ("dew_point_temperature",), ("wind_direction",), ("sea_level_pressure",)),
    columns=(
        *_STATION,
        WeatherColumn("time", ("date",)),
        WeatherColumn("year", ("year",)),
        WeatherColumn("month", ("month",)),
        WeatherColumn("day", ("day",)),
        WeatherColumn("hour", ("hour",)),
        WeatherColumn("minute", ("minute",)),
        WeatherColumn("temperature", ("temperature",), "°C"),
        WeatherColumn("dew_point", ("dew_point_temperature",), "°C"),
        WeatherColumn("humidity", ("relative_humidity",), "%"),
        WeatherColumn("wind_from", ("wind_direction",), "°", missing=(999.0,)),
        WeatherColumn("wind_type", ("wind_direction_measurement_code",)),
        WeatherColumn("wind_speed", ("wind_speed",), "m/s"),
        WeatherColumn("altimeter", ("altimeter",), "hPa"),
        WeatherColumn("station_pressure", ("station_level_pressure",), "hPa"),
        WeatherColumn("sea_level", ("sea_level_pressure",), "hPa"),
        WeatherColumn("cloud", ("sky_cover_1", "sky_cover_2", "sky_cover_3")),
        WeatherColumn("report_type", ("temperature_report_type",)),
        WeatherColumn("report", ("remarks",)),
    ),
    times=(
        TimeRule(("time",), "UTC"),
        TimeRule(("year", "month", "day", "hour", "minute"), "UTC"),
        TimeRule(("year", "month", "day", "hour"), "UTC"),
    ),
    delimiters="|",
    summaries=_SUMMARIES,
)
