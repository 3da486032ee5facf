"""The description of a set of open data: a stub in Ecological Metadata Language, for the guide to complete.

Elements and their order are those of the GBIF metadata profile 1.3, a part of EML 2.2.0.
"""

import xml.etree.ElementTree as ET
from collections.abc import Iterable
from typing import Final

from reporter.compute.open_data.archive import OpenData
from reporter.files.mark import MARK_PROPERTY
from reporter.write.clean import one_line

_NAMESPACE: Final = "https://eml.ecoinformatics.org/eml-2.2.0"
_UNTITLED: Final = "Guided fishing trips"
_UNNAMED: Final = "Fill in: the guide's name"
_RIGHTS: Final = "Fill in: under which licence others may use these data. Until then nobody may."
_TO_DO: Final = (
    "Before you give this away: read the first line of the abstract, fill in the licence and how you may be "
    "reached, and put the day of publication under pubDate. Publish only what you agree to."
)
_WHOLE_EARTH: Final = (("west", "-180"), ("east", "180"), ("north", "90"), ("south", "-90"))


def eml_text(data: OpenData) -> str:
    """Return the description as an XML document."""
    ET.register_namespace("eml", _NAMESPACE)
    root = ET.Element(f"{{{_NAMESPACE}}}eml", packageId=data.key, system=MARK_PROPERTY, scope="system")
    dataset = ET.SubElement(root, "dataset")
    _add(dataset, "title", one_line(data.title) or _UNTITLED)
    _agent(dataset, "creator", data)
    _agent(dataset, "metadataProvider", data)
    published = data.as_of or data.last
    if published:
        _add(dataset, "pubDate", f"{published:%Y-%m-%d}")
    _add(dataset, "language", "en")
    _paragraphs(dataset, "abstract", _abstract(data))
    _paragraphs(dataset, "additionalInfo", [_TO_DO])
    _paragraphs(dataset, "intellectualRights", [_RIGHTS])
    _coverage(dataset, data)
    _agent(dataset, "contact", data)
    ET.indent(root)
    return f'<?xml version="1.0" encoding="UTF-8"?>\n{ET.tostring(root, encoding="unicode")}\n'


def _add(parent: ET.Element, tag: str, text: str) -> None:
    ET.SubElement(parent, tag).text = text


def _agent(parent: ET.Element, tag: str, data: OpenData) -> None:
    _add(ET.SubElement(parent, tag), "organizationName", one_line(data.creator) or _UNNAMED)


def _paragraphs(parent: ET.Element, tag: str, texts: Iterable[str]) -> None:
    element = ET.SubElement(parent, tag)
    for text in texts:
        _add(element, "para", text)


def _abstract(data: OpenData) -> list[str]:
    return [
        _generalised(data),
        "Guided angling trips, an event each, with the fish landed. Effort is anglers times hours with lines "
        "in the water; sample size is those hours. The measurement fate says which fish were kept.",
        _told_of(data),
        *_missing(data),
    ]


def _generalised(data: OpenData) -> str:
    """Return what is told less exactly than the log has it."""
    people = "no person is named, and no coordinates, sites or reaches are given"
    if not data.generalised:
        return f"Not generalised: every water is named. {people.capitalize()}."
    waters = f"{data.waters - data.named} of {data.waters} waters are not named"
    return f"Generalised: {waters}, their trips are placed by county and state at most; {people}."


def _told_of(data: OpenData) -> str:
    if not data.counted:
        return "Fish of every species were to be written down."
    return (
        f"Fish of these species were to be written down: {data.counted}. Others are listed where they were."
    )


def _missing(data: OpenData) -> list[str]:
    """Return what the tables do not hold and the log does, or should."""
    surplus = (
        f"{data.surplus} more fish were landed whose species was not written down; they stand with their "
        "trips as a measurement."
    )
    aside = (
        f"Set aside when the log was read, and not in these data: {data.trips_aside} rows of trips, "
        f"{data.catch_aside} rows of catch."
    )
    parts = ((surplus, data.surplus), (aside, data.trips_aside + data.catch_aside))
    return [text for text, count in parts if count]


def _coverage(dataset: ET.Element, data: OpenData) -> None:
    coverage = ET.SubElement(dataset, "coverage")
    place = ET.SubElement(coverage, "geographicCoverage")
    where = [one_line(word) for word in (*data.regions, *data.counties)]
    words = f"{', '.join(where)}. " if where else ""
    _add(place, "geographicDescription", f"{words}No coordinates are given: the box is the whole earth.")
    box = ET.SubElement(place, "boundingCoordinates")
    for side, degrees in _WHOLE_EARTH:
        _add(box, f"{side}BoundingCoordinate", degrees)
    if data.first and data.last:
        days = ET.SubElement(ET.SubElement(coverage, "temporalCoverage"), "rangeOfDates")
        for tag, day in (("beginDate", data.first), ("endDate", data.last)):
            _add(ET.SubElement(days, tag), "calendarDate", f"{day:%Y-%m-%d}")
