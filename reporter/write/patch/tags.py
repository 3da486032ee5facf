"""Tags in the bytes of an XML part: what is there is cut and joined, never written anew.

The bytes must be well formed and in a character code that keeps ASCII as it is, as UTF-8 does.
"""

import re
from collections.abc import Callable, Mapping
from typing import NamedTuple
from xml.parsers import expat
from xml.sax.saxutils import quoteattr

_START_TAG = re.compile(rb"""<([^\s/>]+)((?:[^"'>]|"[^"]*"|'[^']*')*+)>""")
_ATTRIBUTE = re.compile(rb"""\s+([^\s=]+)\s*=\s*("[^"]*"|'[^']*')""")


class StartTag(NamedTuple):
    """A start tag: its name with prefix, its attributes as they stand, where it starts and ends."""

    name: bytes
    attributes: bytes
    start: int
    end: int
    empty: bool

    @property
    def prefix(self) -> bytes:
        """The prefix of its name with the colon, or nothing."""
        prefix, colon, _ = self.name.rpartition(b":")
        return prefix + colon

    def has(self, name: str) -> bool:
        """Whether it has an attribute of that name."""
        return any(found[1].decode() == name for found in _ATTRIBUTE.finditer(self.attributes))

    def made(
        self,
        change: Mapping[str, str | None],
        *,
        empty: bool | None = None,
    ) -> bytes:
        """Write the tag with some attributes set, or taken away where None; the others as they stand."""
        kept = _ATTRIBUTE.sub(lambda found: b"" if found[1].decode() in change else found[0], self.attributes)
        more = "".join(f" {name}={quoteattr(value)}" for name, value in change.items() if value is not None)
        slash = b"/" if (self.empty if empty is None else empty) else b""
        return b"<" + self.name + kept.rstrip() + more.encode("ascii") + slash + b">"


def start_tag(data: bytes, start: int) -> StartTag:
    """Read the start tag that begins at an offset; a ValueError where none does."""
    found = _START_TAG.match(data, start)
    if found is None:
        raise ValueError(f"no tag starts at {start}")
    inside = found[2]
    empty = inside.endswith(b"/")
    return StartTag(found[1], inside[:-1] if empty else inside, start, found.end(), empty)


def end_of(data: bytes, tag: StartTag, index: int) -> int:
    """Return where an element ends, given the offset that the parser reports at its end."""
    return tag.end if tag.empty else data.index(b">", index) + 1


class Element(NamedTuple):
    """An element: name behind its namespace and a space, attributes, depth (the root's is 0), span."""

    name: str
    attributes: Mapping[str, str]
    depth: int
    tag: StartTag
    end: int
    closes: int  # where its end tag starts; the end of an empty element


def elements(data: bytes) -> list[Element]:
    """List the elements of a small part, in the order in which they end; an ExpatError where it is broken."""
    found: list[Element] = []
    opened: list[tuple[str, dict[str, str], StartTag]] = []
    parser = expat.ParserCreate(namespace_separator=" ")

    def start(name: str, attributes: dict[str, str]) -> None:
        opened.append((name, attributes, start_tag(data, parser.CurrentByteIndex)))

    def end(name: str) -> None:
        _, attributes, tag = opened.pop()
        index = parser.CurrentByteIndex
        closes = tag.end if tag.empty else index
        found.append(Element(name, attributes, len(opened), tag, end_of(data, tag, index), closes))

    parser.StartElementHandler, parser.EndElementHandler = start, end
    parser.Parse(data, True)
    return found


class Edit(NamedTuple):
    """New bytes in place of those from start to end."""

    start: int
    end: int
    new: bytes


def edited(data: bytes, edits: list[Edit]) -> bytes:
    """Make edits that do not overlap; of several at one place the first given comes first."""
    pieces: list[bytes] = []
    at = 0
    for edit in sorted(edits, key=lambda edit: (edit.start, edit.end)):
        if edit.start < at:
            raise ValueError(f"two edits overlap at {edit.start}")
        pieces += (data[at : edit.start], edit.new)
        at = edit.end
    return b"".join((*pieces, data[at:]))


def without(data: bytes, unwanted: Callable[[Element], bool]) -> bytes:
    """Cut elements out of a small part."""
    return edited(data, [Edit(one.tag.start, one.end, b"") for one in elements(data) if unwanted(one)])
