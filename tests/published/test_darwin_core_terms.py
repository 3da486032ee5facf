"""The terms of an archive against the standard's own list of terms.

Source: TDWG, Darwin Core, as kept in the repository tdwg/dwc: build/event_core_list.csv and
build/occurrence_core_list.csv at 841e243, build/extended_mof_list.csv at db0a54b, each of which gives terms
by class and identifier; taxonRemarks and the classes themselves from dist/all_dwc_vertical.csv and
vocabulary/term_versions.csv there. The class of the measurements is not the standard's own but that of the
Ocean Biodiversity Information System; from memory of its manual, and confirmed in public archives.
"""

import xml.etree.ElementTree as ET
from pathlib import Path

import pytest

from tests.compute.open_data.archives import archive_of
from tests.conftest import WriteLog

TEXT = "{http://rs.tdwg.org/dwc/text/}"
EVENT = {
    "http://rs.tdwg.org/dwc/terms/dataGeneralizations",
    "http://rs.tdwg.org/dwc/terms/informationWithheld",
    "http://rs.tdwg.org/dwc/terms/eventID",
    "http://rs.tdwg.org/dwc/terms/parentEventID",
    "http://rs.tdwg.org/dwc/terms/samplingProtocol",
    "http://rs.tdwg.org/dwc/terms/sampleSizeValue",
    "http://rs.tdwg.org/dwc/terms/sampleSizeUnit",
    "http://rs.tdwg.org/dwc/terms/samplingEffort",
    "http://rs.tdwg.org/dwc/terms/eventDate",
    "http://rs.tdwg.org/dwc/terms/eventRemarks",
    "http://rs.tdwg.org/dwc/terms/locationID",
    "http://rs.tdwg.org/dwc/terms/waterBody",
    "http://rs.tdwg.org/dwc/terms/countryCode",
    "http://rs.tdwg.org/dwc/terms/stateProvince",
    "http://rs.tdwg.org/dwc/terms/county",
    "http://rs.tdwg.org/dwc/terms/decimalLatitude",
    "http://rs.tdwg.org/dwc/terms/decimalLongitude",
}
OCCURRENCE = {
    "http://rs.tdwg.org/dwc/terms/eventID",
    "http://rs.tdwg.org/dwc/terms/basisOfRecord",
    "http://rs.tdwg.org/dwc/terms/occurrenceID",
    "http://rs.tdwg.org/dwc/terms/recordedBy",
    "http://rs.tdwg.org/dwc/terms/individualCount",
    "http://rs.tdwg.org/dwc/terms/occurrenceStatus",
    "http://rs.tdwg.org/dwc/terms/scientificNameID",
    "http://rs.tdwg.org/dwc/terms/scientificName",
    "http://rs.tdwg.org/dwc/terms/taxonRank",
    "http://rs.tdwg.org/dwc/terms/vernacularName",
    "http://rs.tdwg.org/dwc/terms/taxonRemarks",
}
MEASUREMENT = {
    "http://rs.tdwg.org/dwc/terms/eventID",
    "http://rs.tdwg.org/dwc/terms/occurrenceID",
    "http://rs.tdwg.org/dwc/terms/measurementID",
    "http://rs.tdwg.org/dwc/terms/measurementType",
    "http://rs.tdwg.org/dwc/terms/measurementValue",
    "http://rs.tdwg.org/dwc/terms/measurementUnit",
    "http://rs.tdwg.org/dwc/terms/measurementDeterminedDate",
    "http://rs.tdwg.org/dwc/terms/measurementMethod",
    "http://rs.tdwg.org/dwc/terms/measurementRemarks",
}
FILES = [
    ("event.txt", "http://rs.tdwg.org/dwc/terms/Event", EVENT),
    ("occurrence.txt", "http://rs.tdwg.org/dwc/terms/Occurrence", OCCURRENCE),
    ("measurementorfact.txt", "http://rs.iobis.org/obis/terms/ExtendedMeasurementOrFact", MEASUREMENT),
]


@pytest.fixture(scope="module")
def meta(write_log: WriteLog, tmp_path_factory: pytest.TempPathFactory) -> ET.Element:
    folder: Path = archive_of(write_log(), tmp_path_factory.mktemp("out"))
    return ET.parse(folder / "meta.xml").getroot()  # noqa: S314 - our own file


@pytest.mark.parametrize(("name", "row_type", "terms"), FILES)
def test_columns_of_a_file_are_terms_of_the_standard(
    meta: ET.Element, name: str, row_type: str, terms: set[str]
) -> None:
    (found,) = (part for part in meta if part.findtext(f"{TEXT}files/{TEXT}location") == name)
    assert found.get("rowType") == row_type
    assert {field.get("term") for field in found.iter(f"{TEXT}field")} == terms


def test_kept_and_released_are_no_disposition(meta: ET.Element) -> None:
    # disposition says where a specimen is.
    assert not [f for f in meta.iter(f"{TEXT}field") if str(f.get("term")).endswith("disposition")]


def test_metafile_is_built_as_the_text_guide_says(meta: ET.Element) -> None:
    # tdwg_dwc_text.xsd: one core, then extensions; in each files, then id or coreid, then fields.
    assert meta.tag == f"{TEXT}archive"
    assert meta.get("metadata") == "eml.xml"
    assert [part.tag for part in meta] == [f"{TEXT}core", f"{TEXT}extension", f"{TEXT}extension"]
    for part in meta:
        tags = [child.tag.removeprefix(TEXT) for child in part]
        key = "id" if part.tag == f"{TEXT}core" else "coreid"
        assert tags == ["files", key, *["field"] * (len(tags) - 2)]
