"""What stands behind the address of a plain cell, such as ` s="3" t="s"><v>12</v></c>`, and its value."""

import re
from typing import Final

from reporter.read.cells import CellError, settled_text, settled_value
from reporter.read.moments import Moment, moment_of
from reporter.read.raw import CellValue
from reporter.read.shared_texts import text_in

_MOST_KEPT: Final = 200_000  # at a time: 100,000 fish with a note each have as many

_PLAIN = re.compile(
    r"""
    (?:\ s="(?P<style>[0-9]{1,6})")?
    (?: \ t="s"><v>(?P<text>[0-9]{1,7})</v></c>
      | (?:\ t="n")?><v>
        (?: (?P<whole>-?[0-9]{1,18}) | (?P<broken>-?[0-9]{1,18}(?:\.[0-9]{1,20})?(?:[eE][-+]?[0-9]{1,2})?) )
        </v></c>
      | \ t="b"><v>(?P<truth>[01])</v></c>
      | \ t="inlineStr"><is>(?P<inline>.*)</is></c>
      | (?:\ t="[nsb]")? (?: \ ?/> | ></c> | ><v\ ?/></c> | ><v></v></c> )
    )
    """,
    re.VERBOSE | re.DOTALL,
)


class Uncommon(ValueError):  # noqa: N818 - no error: the other way reads it
    """A worksheet is not laid out plainly."""


class Endings(dict[str, CellValue]):
    """Values by endings, each read and settled once; Uncommon, or another exception, where one is not plain.

    texts: what cells name by number. moments: the cell styles in which a number is a moment.
    """

    def __init__(self, texts: list[str], moments: dict[int, Moment]) -> None:
        super().__init__()
        self.unseen: set[str] = set()  # endings with a value in which nothing can be seen
        self._texts = texts
        self._moments = moments

    def __missing__(self, ending: str) -> CellValue:
        found = _PLAIN.fullmatch(ending)
        if found is None:
            raise Uncommon(ending)
        stored = self._stored(found)
        value = settled_text(stored) if isinstance(stored, str) else settled_value(stored)
        if isinstance(value, CellError):
            raise Uncommon("an error is marked by its address")
        if len(self) >= _MOST_KEPT:
            self.clear()
            self.unseen.clear()
        if value is None and stored is not None:
            self.unseen.add(ending)
        self[ending] = value
        return value

    def _stored(self, found: re.Match[str]) -> CellValue:
        kind = found.lastgroup
        if kind == "text":
            return self._texts[int(found[kind])]
        if kind == "whole" or kind == "broken":
            number = int(found[kind]) if kind == "whole" else float(found[kind])
            moment = self._moments.get(int(found["style"] or 0))
            return moment_of(number, moment) if moment else number
        if kind == "truth":
            return found[kind] == "1"
        return text_in(found[kind]) if kind == "inline" else None
