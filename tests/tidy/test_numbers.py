"""Numbers and measures as people type them; every expected value is worked out by hand."""

import datetime as dt

import pytest

from reporter.read.raw import CellValue
from reporter.schema.units import Quantity, find_unit
from reporter.tidy.measures import read_measure
from reporter.tidy.numbers import DecimalMark, read_count, read_number
from reporter.tidy.words import NotRead

REFUSED = "refused"


def outcome(read: float | NotRead) -> float | str:
    return REFUSED if isinstance(read, NotRead) else read


@pytest.mark.parametrize(
    ("typed", "number"),
    [
        (12, 12),
        (12.5, 12.5),
        (-3, -3),
        ("12", 12),
        (" 12 ", 12),
        ("'12", 12),
        ("1e3", REFUSED),
        ("+4", 4),
        (".5", 0.5),
        ("4.", 4),
        ("１２", 12),
        ("12\u00a0", 12),
        ("\u22124", -4),
        ("18 1/4", 18.25),
        ("18-1/4", 18.25),
        ("18¼", 18.25),
        ("18 ¼", 18.25),
        ("13 7/8", 13.875),
        ("¾", 0.75),
        ("18 1/0", REFUSED),
        ("18 5/4", REFUSED),
        ("18 1/7", REFUSED),
        ("4 8", REFUSED),
        ("4/", REFUSED),
        ("12-14", REFUSED),
        ("~18", REFUSED),
        ("18+", REFUSED),
        ("18?", REFUSED),
        ("3 + 1 lost", REFUSED),
        ("3+2", REFUSED),
        ("dozen", REFUSED),
        ("lots", REFUSED),
        ("NaN", REFUSED),
        ("inf", REFUSED),
        ("", REFUSED),
        (True, REFUSED),
        (dt.date(2026, 4, 8), REFUSED),
        (dt.datetime(2026, 4, 8), REFUSED),
        (dt.time(4, 8), REFUSED),
        (dt.timedelta(hours=4), REFUSED),
        (10**400, REFUSED),
        ("9" * 5000, REFUSED),
        ("9" * 5000 + "/2", REFUSED),
    ],
)
def test_number_is_read_or_refused(typed: CellValue, number: float | str) -> None:
    assert outcome(read_number(typed, None)) == number


@pytest.mark.parametrize(
    ("typed", "unset", "point", "comma"),
    [
        ("4.5", 4.5, 4.5, REFUSED),
        ("4,5", 4.5, REFUSED, 4.5),
        ("18,25", 18.25, REFUSED, 18.25),
        ("1,200", REFUSED, REFUSED, 1.2),
        ("1.200,5", REFUSED, REFUSED, 1200.5),
        ("1,200.5", REFUSED, REFUSED, REFUSED),
        ("1,2,3", REFUSED, REFUSED, REFUSED),
        ("12", 12, 12, 12),
        (4.5, 4.5, 4.5, 4.5),
    ],
)
def test_comma_is_read_by_the_setting(
    typed: CellValue, unset: float | str, point: float | str, comma: float | str
) -> None:
    marks: tuple[DecimalMark, ...] = (None, "point", "comma")
    assert [outcome(read_number(typed, mark)) for mark in marks] == [unset, point, comma]


@pytest.mark.parametrize(
    ("typed", "count"),
    [
        (3, 3),
        (3.0, 3),
        ("3", 3),
        ("none", 0),
        ("None", 0),
        ("nil", 0),
        (0, 0),
        (2.5, REFUSED),
        (-1, REFUSED),
        ("limit", REFUSED),
    ],
)
def test_count_is_a_whole_number_from_0(typed: CellValue, count: float | str) -> None:
    assert outcome(read_count(typed, None)) == count


# (typed, quantity, the column's unit, value in mm, g, degrees C, hPa, m/s, m, hours or minutes)
MEASURES: list[tuple[CellValue, Quantity, str, float | str]] = [
    ("4-8", "weight", "lb", 2041.165665),
    ("4 lb 8 oz", "weight", "lb", 2041.165665),
    ("4lb8oz", "weight", "lb", 2041.165665),
    ("4# 8oz", "weight", "lb", 2041.165665),
    ("4 - 8", "weight", "lb", 2041.165665),
    ("4–8", "weight", "lb", 2041.165665),
    ("4 lbs. 8 oz.", "weight", "lb", 2041.165665),
    ("4 LB 8 OZ", "weight", "kg", 2041.165665),
    ("4.5", "weight", "lb", 2041.165665),
    (4.5, "weight", "lb", 2041.165665),
    ("4 1/2 lb", "weight", "lb", 2041.165665),
    ("4½ lb", "weight", "lb", 2041.165665),
    ("4.8", "weight", "lb", 2177.243376),
    ("80 oz", "weight", "lb", 2267.96185),
    ("0-12", "weight", "lb", 340.1942775),
    ("12 oz", "weight", "lb", 340.1942775),
    ("2.04 kg", "weight", "lb", 2040.0),
    ("2040 g", "weight", "lb", 2040.0),
    ("1-15.5", "weight", "lb", 893.0099784375),
    ("4 lb 8½ oz", "weight", "lb", 2055.3404265625),
    ("4-8 1/2", "weight", "lb", 2055.3404265625),
    ("4-1/2", "weight", "lb", 2041.165665),
    ("4-8 1/7", "weight", "lb", REFUSED),
    ("4-8 lb", "weight", "lb", REFUSED),
    ("4-16", "weight", "lb", REFUSED),
    ("4 lb 20 oz", "weight", "lb", REFUSED),
    ("4 8", "weight", "lb", REFUSED),
    ("4/8", "weight", "lb", REFUSED),
    ("4.5-8", "weight", "lb", REFUSED),
    ("18 in", "weight", "lb", REFUSED),
    (dt.datetime(2026, 4, 8), "weight", "lb", REFUSED),
    ("big", "weight", "lb", REFUSED),
    ("18 1/4", "fish length", "in", 463.55),
    ("18-1/4", "fish length", "in", 463.55),
    ("18¼", "fish length", "in", 463.55),
    ('18.25"', "fish length", "in", 463.55),
    ("18.25”", "fish length", "in", 463.55),
    ("18.25 in", "fish length", "in", 463.55),
    ("18 1/4 inches", "fish length", "cm", 463.55),
    ("1 ft 6 in", "fish length", "in", 457.2),
    ("1'6\"", "fish length", "in", 457.2),
    ("1’ 6”", "fish length", "cm", 457.2),
    ("1' 6 1/2\"", "fish length", "in", 469.9),
    ("1 ft 6½ in", "fish length", "in", 469.9),
    ("1'", "fish length", "in", 304.8),
    ("2 feet", "fish length", "cm", 609.6),
    ("18.5''", "fish length", "in", 469.9),
    ("18.5′′", "fish length", "in", 469.9),
    ("1.6 ft", "fish length", "in", REFUSED),
    ("46 cm", "fish length", "in", 460.0),
    ("460 mm", "fish length", "in", 460.0),
    ("46", "fish length", "cm", 460.0),
    ("13 7/8", "fish length", "in", 352.425),
    ("12-14", "fish length", "in", REFUSED),
    ("4 lb", "fish length", "in", REFUSED),
    (58, "temperature", "°F", 14.4444444),
    ("58 F", "temperature", "°C", 14.4444444),
    ("58°F", "temperature", "°C", 14.4444444),
    ("14.5 C", "temperature", "°F", 14.5),
    ("-4", "temperature", "°F", -20.0),
    ("-4 °F", "temperature", "°F", -20.0),
    (29.92, "pressure", "inHg", 1013.2075888),
    ("1013 hPa", "pressure", "inHg", 1013.0),
    ("101.3 kPa", "pressure", "hPa", 1013.0),
    (10, "speed", "mph", 4.4704),
    ("36 km/h", "speed", "mph", 10.0),
    ("10 kt", "speed", "mph", 5.1444444),
    ("5 m/s", "speed", "mph", 5.0),
    (6, "depth", "ft", 1.8288),
    ("2 m", "depth", "ft", 2.0),
    ("6'", "depth", "m", 1.8288),
    ("5.5 %", "share", "%", 0.055),
    ("$12400.50", "money", "", REFUSED),
    ("12400.50 $", "money", "", 12400.5),
]


@pytest.mark.parametrize(("typed", "quantity", "unit", "inside"), MEASURES)
def test_measure_is_read_with_its_unit(
    typed: CellValue, quantity: Quantity, unit: str, inside: float | str
) -> None:
    own = find_unit(quantity, unit)
    assert own is not None
    assert outcome(read_measure(typed, quantity, own, "point")) == (
        inside if inside == REFUSED else pytest.approx(inside, rel=1e-8)
    )


def test_decimal_comma_is_read_before_a_unit() -> None:
    inches = find_unit("fish length", "in")
    assert inches is not None
    assert read_measure("18,25 in", "fish length", inches, "comma") == pytest.approx(463.55)


@pytest.mark.parametrize(
    ("typed", "hours", "minutes"),
    [
        ("1:30", 1.5, 90),
        ("0:45", 0.75, 45),
        (dt.time(1, 30), 1.5, 90),
        (dt.timedelta(hours=26, minutes=30), 26.5, 1590),
        ("1h30", 1.5, 90),
        ("1 h 30 min", 1.5, 90),
        ("1.5 h", 1.5, 90),
        ("1½ hours", 1.5, 90),
        ("90 min", 1.5, 90),
        ("90 mins.", 1.5, 90),
        (1.5, 1.5, 1.5),
        ("45", 45, 45),
        ("1:30:00", 1.5, 90),
        ("1:75", REFUSED, REFUSED),
        ("an hour", REFUSED, REFUSED),
        ("9" * 5000 + ":30", REFUSED, REFUSED),
        (dt.datetime(2026, 4, 18, 1, 30), REFUSED, REFUSED),
        (True, REFUSED, REFUSED),
    ],
)
def test_duration_is_read_in_the_unit_of_its_column(
    typed: CellValue, hours: float | str, minutes: float | str
) -> None:
    hour, minute = find_unit("hours", "h"), find_unit("minutes", "min")
    assert hour is not None
    assert minute is not None
    assert outcome(read_measure(typed, "hours", hour, None)) == hours
    assert outcome(read_measure(typed, "minutes", minute, None)) == minutes


def test_long_text_is_refused_at_once() -> None:
    depth = find_unit("depth", "ft")
    assert depth is not None
    assert outcome(read_measure(".a" * 16_000 + "1", "depth", depth, None)) == REFUSED
