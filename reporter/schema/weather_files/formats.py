"""Every kind of weather file that is read, in the order in which they are tried."""

from reporter.schema.weather_files.airports import ASOS, ASOS_MINUTES, AVIATION, METAR, NYC_TABLE
from reporter.schema.weather_files.archives import GHCNH, ISD, ISD_LITE, LCD, LCD_OLDER
from reporter.schema.weather_files.form import WeatherFormat
from reporter.schema.weather_files.others import BUOY, CANADA, NETWORK, POINT_TABLE

FORMATS: tuple[WeatherFormat, ...] = (
    ASOS_MINUTES,
    ASOS,
    LCD,
    LCD_OLDER,
    ISD,
    ISD_LITE,
    GHCNH,
    NETWORK,
    AVIATION,
    BUOY,
    CANADA,
    POINT_TABLE,
    NYC_TABLE,
    METAR,
)
