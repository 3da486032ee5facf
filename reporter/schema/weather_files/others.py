"""Files of networks, buoys and weather services outside the airports."""

from reporter.schema.weather_files.form import TimeRule, WeatherColumn, WeatherFormat

NETWORK = WeatherFormat(
    name="Station network CSV",
    recognised=(("station_id",), ("date_time",)),
    columns=(
        WeatherColumn("station", ("station_id",)),
        WeatherColumn("time_zoned", ("date_time",)),
        WeatherColumn("temperature", ("air_temp_set_1",), ""),
        WeatherColumn("dew_point", ("dew_point_temperature_set_1", "dew_point_temperature_set_1d"), ""),
        WeatherColumn("humidity", ("relative_humidity_set_1",), "%"),
        WeatherColumn("wind_from", ("wind_direction_set_1",), "°"),
        WeatherColumn("wind_speed", ("wind_speed_set_1",), ""),
        WeatherColumn("altimeter", ("altimeter_set_1", "altimeter_set_1d"), ""),
        WeatherColumn("station_pressure", ("pressure_set_1", "pressure_set_1d"), ""),
        WeatherColumn("sea_level", ("sea_level_pressure_set_1", "sea_level_pressure_set_1d"), ""),
        WeatherColumn("report", ("metar_set_1",)),
    ),
    times=(TimeRule(("time_zoned",), "in the text"),),
    units_row=True,
    north_is_zero=True,
)

BUOY = WeatherFormat(
    name="NDBC standard meteorological",
    recognised=(("#yy", "yy", "yyyy", "#yyyy"), ("mm",), ("dd",), ("wdir", "wd"), ("wspd",), ("atmp",)),
    columns=(
        WeatherColumn("year", ("#yy", "yy", "yyyy", "#yyyy")),
        WeatherColumn("month", ("mm",)),
        WeatherColumn("day", ("dd",)),
        WeatherColumn("hour", ("hh",)),
        WeatherColumn("minute", ("mm 2",)),
        WeatherColumn("temperature", ("atmp",), "°C", missing=(99.0, 999.0)),
        WeatherColumn("dew_point", ("dewp",), "°C", missing=(99.0, 999.0)),
        WeatherColumn("wind_from", ("wdir", "wd"), "°", missing=(999.0,)),
        WeatherColumn("wind_speed", ("wspd",), "m/s", missing=(99.0, 999.0)),
        WeatherColumn("sea_level", ("pres", "bar"), "hPa", missing=(999.0, 9999.0)),
    ),
    times=(
        TimeRule(("year", "month", "day", "hour", "minute"), "UTC"),
        TimeRule(("year", "month", "day", "hour"), "UTC"),
    ),
    delimiters=" ",
    north_is_zero=True,
    name_holds=r"[0-9A-Za-z]{5}(?=h\d{4}|\b)",
)

CANADA = WeatherFormat(
    name="Environment Canada hourly",
    recognised=(("date/time",), ("temp (°c)", "temp (c)"), ("wind dir (10s deg)",), ("stn press (kpa)",)),
    columns=(
        WeatherColumn("station", ("climate id",)),
        WeatherColumn("station_name", ("station name",)),
        WeatherColumn("time", ("date/time",)),
        WeatherColumn("temperature", ("temp (°c)", "temp (c)"), "°C"),
        WeatherColumn("dew_point", ("dew point temp (°c)", "dew point temp (c)"), "°C"),
        WeatherColumn("humidity", ("rel hum (%)",), "%"),
        WeatherColumn("wind_from", ("wind dir (10s deg)",), "°", scale=10.0),
        WeatherColumn("wind_speed", ("wind spd (km/h)",), "km/h"),
        WeatherColumn("station_pressure", ("stn press (kpa)",), "kPa"),
    ),
    times=(TimeRule(("time",), "standard time"),),
)

POINT_TABLE = WeatherFormat(
    name="Hourly point table",
    recognised=(("time",), ("temp",), ("rhum",), ("wdir",), ("wspd",), ("pres",)),
    columns=(
        WeatherColumn("station", ("station",)),
        WeatherColumn("time", ("time",)),
        WeatherColumn("temperature", ("temp",), "°C"),
        WeatherColumn("dew_point", ("dwpt",), "°C"),
        WeatherColumn("humidity", ("rhum",), "%"),
        WeatherColumn("wind_from", ("wdir",), "°"),
        WeatherColumn("wind_speed", ("wspd",), "km/h"),
        WeatherColumn("sea_level", ("pres",), "hPa"),
    ),
    times=(TimeRule(("time",), "UTC"),),
    north_is_zero=True,
)
