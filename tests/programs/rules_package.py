"""What a package must be for a program to open it as it is: ECMA-376 part 2, and the ids of the parts."""

import posixpath
from collections import Counter
from collections.abc import Iterable, Iterator
from xml.etree import ElementTree as ET

from tests.programs.package import RELATED, TYPES, Package

_PROPERTIES = "docProps/core.xml"


def repeated(things: Iterable[object]) -> list[object]:
    """Give what is there more than once."""
    return [thing for thing, times in Counter(things).items() if times > 1]


def malformed(package: Package) -> Iterator[str]:
    """Say which parts are no XML, or have a document type, which is not allowed in a package."""
    yield from (f"{name}: twice in the package" for name in repeated(map(str.casefold, package.names)))
    for name, content in package.parts.items():
        try:
            package.tree(name)
        except ET.ParseError as error:
            yield f"{name}: {error}"
        if b"<!DOCTYPE" in content:
            yield f"{name}: has a document type"


def contents(package: Package) -> Iterator[str]:
    """Say which parts have no kind of content, and which kinds are given for no part."""
    kinds = package.tree(TYPES)
    given = {kind.attrib["PartName"].lstrip("/") for kind in kinds.iterfind("{*}Override")}
    endings = {kind.attrib["Extension"] for kind in kinds.iterfind("{*}Default")} - {"xml"}
    for name in package.names:
        if name != TYPES and name not in given and name.rsplit(".", 1)[-1] not in endings:
            yield f"{name}: no kind of content"
    yield from (f"{name}: a kind of content for no part" for name in sorted(given - set(package.names)))


def relationships(package: Package) -> Iterator[str]:
    """Say which relationships lead nowhere, which ids have none, and which parts nothing leads to."""
    reached = {""}
    for part in ("", *package.names):
        links = package.links(part)
        yield from (f"{part}: the id {key} twice" for key in repeated(key for key, _, _ in links))
        for key, kind, target in links:
            if kind != "hyperlink" and target not in package.parts:
                yield f"{part}: {key} leads to {target}, which is not there"
            reached.add(target)
        yield from _unrelated(package, part, {key for key, _, _ in links})
    for name in package.names:
        if name not in reached and name != TYPES and posixpath.basename(posixpath.dirname(name)) != "_rels":
            yield f"{name}: nothing leads to it"


def _unrelated(package: Package, part: str, known: set[str]) -> Iterator[str]:
    if not part.endswith(".xml"):
        return
    used = {
        value
        for element in package.tree(part).iter()
        for key, value in element.attrib.items()
        if key.startswith(RELATED)
    }
    yield from (f"{part}: {key} is no relationship" for key in sorted(used - known))


def properties(package: Package) -> Iterator[str]:
    """Say which property of the document stands twice; a second title makes a program refuse the file."""
    tags = [element.tag.rsplit("}", 1)[1] for element in package.tree(_PROPERTIES)]
    yield from (f"{_PROPERTIES}: {tag} twice" for tag in repeated(tags))
    if "docProps/custom.xml" in package.parts:
        own = [element.attrib for element in package.tree("docProps/custom.xml")]
        for key in ("pid", "name"):
            yield from (f"custom property {key} {value} twice" for value in repeated(one[key] for one in own))


RULES = (malformed, contents, relationships, properties)
