"""The cell styles of a workbook: which number format a style has, and the same style with another format."""

from typing import Final

from openpyxl.styles.numbers import BUILTIN_FORMATS, is_datetime, is_timedelta_format

from reporter.read.package import MAIN
from reporter.write.patch.content import Form
from reporter.write.patch.tags import Edit, Element, edited, elements

_FORMATS: Final[dict[Form, str]] = {
    "number": "0",
    "date": "14",
    "moment": "22",
    "time": "20",
    "duration": "46",
}
"""Formats that every spreadsheet program has, shown as its country writes them."""

_FITTING: Final[dict[Form, frozenset[str]]] = {
    "number": frozenset({""}),
    "date": frozenset({"date", "datetime"}),
    "moment": frozenset({"date", "datetime"}),
    "time": frozenset({"time", "duration"}),
    "duration": frozenset({"duration"}),
}
"""What a number format may show for a value to be read again as what it is."""


class Styles:
    """The styles part of a workbook. Styles that are missed are added at the end; none is changed."""

    def __init__(self, data: bytes) -> None:
        self._data = data
        found = elements(data)
        self._home = next((one for one in found if one.depth == 1 and one.name == f"{MAIN} cellXfs"), None)
        self._styles = [one for one in found if self._home and _lies_in(one, self._home)]
        self._own = {
            one.attributes["numFmtId"]: one.attributes["formatCode"]
            for one in found
            if one.name == f"{MAIN} numFmt" and one.depth == 2
        }
        self._added: dict[tuple[int, str], int] = {}

    @property
    def known(self) -> bool:
        """Whether there are cell styles at all."""
        return bool(self._styles)

    def fitting(self, style: int, form: Form) -> int:
        """Return the number of a style that shows a form: the given one, else one that differs in that."""
        if form == "any" or self._shows(style) in _FITTING[form] or not self.known:
            return style
        key = (style if style < len(self._styles) else 0, _FORMATS[form])
        return self._added.setdefault(key, len(self._styles) + len(self._added))

    def patched(self) -> bytes:
        """Return the part with the styles that were missed."""
        if not self._added or self._home is None:
            return self._data
        new = b"".join(self._like(style, number_format) for style, number_format in self._added)
        count = {"count": str(len(self._styles) + len(self._added))}
        tag = self._home.tag
        return edited(
            self._data,
            [Edit(tag.start, tag.end, tag.made(count)), Edit(self._home.closes, self._home.closes, new)],
        )

    def _like(self, style: int, number_format: str) -> bytes:
        old = self._styles[style]
        tag = old.tag.made({"numFmtId": number_format, "applyNumberFormat": "1"})
        return tag + self._data[old.tag.end : old.end]

    def _shows(self, style: int) -> str:
        """Return what the number format of a style shows: a date, datetime, time, duration, or nothing."""
        if style >= len(self._styles):
            return ""
        number = self._styles[style].attributes.get("numFmtId", "0")
        code = self._own.get(number) or BUILTIN_FORMATS.get(int(number), "General")
        return "duration" if is_timedelta_format(code) else is_datetime(code) or ""


def _lies_in(one: Element, home: Element) -> bool:
    return one.depth == 2 and one.name == f"{MAIN} xf" and home.tag.end <= one.tag.start < home.end
