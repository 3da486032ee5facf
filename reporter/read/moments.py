"""Which number formats make a number a moment or a span of time, and which one: as openpyxl tells it."""

import datetime as dt
import re
import zipfile
from typing import Final, Literal
from xml.etree import ElementTree

from reporter.read.package import MAIN, tree_of

Moment = Literal["date", "span"]

STYLES: Final = "xl/styles.xml"
BUILT_IN: Final[dict[int, Moment]] = {**dict.fromkeys((*range(14, 23), 45, 47), "date"), 46: "span"}
"""Numbers of the formats that every program has and no workbook spells out."""

LAST_DAY: Final = 2_958_465  # 31 December 9999
LONGEST_SPAN: Final = 10_000  # days; far beyond it openpyxl rounds by chance

_EPOCH = dt.datetime(1899, 12, 30)
_FEBRUARY_29 = 60  # a day that 1900 had not: the days before it are counted from a day later
_DAY_S = 86_400

_NOT_SHOWN = re.compile(r'".*?"|\[(?!(?:hh?|mm?|ss?)\])[^\]]*\]')  # text in quotes, colours, languages
_DATE = re.compile(r"(?<![_\\])[dmhysDMHYS]")
_SPAN = re.compile(r"\[(?:hh?|mm?|ss?)\]", re.IGNORECASE)


def moment_styles(archive: zipfile.ZipFile) -> dict[int, Moment]:
    """Return the cell styles, by number, in which a number is a moment.

    KeyError where the workbook has no styles, ValueError where they are unusual.
    """
    root = tree_of(archive, STYLES)
    if root.tag != f"{{{MAIN}}}styleSheet":
        raise ValueError("no styles as common programs write them")
    written = {
        int(found.attrib["numFmtId"]): format_kind(found.attrib["formatCode"])
        for found in _listed(root, "numFmts", "numFmt")
    }
    kinds: dict[int, Moment | None] = {**BUILT_IN, **written}
    styles = _listed(root, "cellXfs", "xf")
    found = ((number, kinds.get(int(style.attrib["numFmtId"]))) for number, style in enumerate(styles))
    return {number: kind for number, kind in found if kind}


def _listed(root: ElementTree.Element, name: str, member: str) -> list[ElementTree.Element]:
    """Return the members of the one list of this name."""
    lists = root.findall(f"{{*}}{name}")
    members = [found for each in lists for found in each]
    if len(lists) > 1 or any(found.tag != f"{{{MAIN}}}{member}" for found in members):
        raise ValueError(f"{name} as no common program writes them")
    return members


def format_kind(code: str) -> Moment | None:
    """Tell what a number is in this format; only the part for numbers above zero is looked at."""
    first = code.partition(";")[0]
    if not _DATE.search(_NOT_SHOWN.sub("", first)):
        return None
    return "span" if _SPAN.search(first) else "date"


def moment_of(serial: float, kind: Moment) -> dt.datetime | dt.time | dt.timedelta:
    """Return the moment of a serial number, to the millisecond; below 1 it is a time of day.

    serial: days, 0 to LONGEST_SPAN of a span, to LAST_DAY of a date; beyond them a ValueError.
    """
    if not 0 <= serial < (LONGEST_SPAN if kind == "span" else LAST_DAY):
        raise ValueError(f"{serial} days is no moment of a log")
    if kind == "span":
        span = dt.timedelta(days=serial)
        micro = span.microseconds
        return span + dt.timedelta(microseconds=round(micro, -3) - micro)
    days, part = divmod(serial, 1)
    # In these two steps: in one, the last digit can round another way.
    clock = dt.timedelta(milliseconds=round(part * _DAY_S * 1000))
    if serial < 1 and not clock.days:
        return (dt.datetime.min + clock).time()
    early = 1 if 0 < serial < _FEBRUARY_29 else 0
    return _EPOCH + dt.timedelta(days=days + early) + clock
