"""The tables of a Darwin Core archive: every column is a term of the standard, under its name there.

Source: Darwin Core terms and text guide (Biodiversity Information Standards, TDWG).
"""

from typing import Final, NamedTuple

from reporter.schema.csv_table import CsvField, CsvTable

TERMS: Final = "http://rs.tdwg.org/dwc/terms/"


class ArchiveFile(NamedTuple):
    """A file of the archive: its table, what a row is (URI of a class). Its first column names the event."""

    table: CsvTable
    row_type: str

    @property
    def name(self) -> str:
        """Name of the file."""
        return f"{self.table.name}.txt"


EVENTS = CsvTable(
    "event",
    "a trip, or an outing of several trips",
    (
        CsvField("eventID", "string", "Identifier of the trip or outing."),
        CsvField("parentEventID", "string", "Identifier of the outing that the trip belongs to."),
        CsvField("eventDate", "string", "Day, or first and last day with / between (ISO 8601)."),
        CsvField("samplingProtocol", "string", "angling."),
        CsvField("samplingEffort", "string", "Anglers x hours fished, as 22.5 angler-hours."),
        CsvField("sampleSizeValue", "number", "Hours fished: lines in to lines out, less hours off."),
        CsvField("sampleSizeUnit", "string", "hour, where there is a value."),
        CsvField("countryCode", "string", "Country (ISO 3166-1)."),
        CsvField("stateProvince", "string", "State or province (ISO 3166-2)."),
        CsvField("county", "string", "County as typed."),
        CsvField("waterBody", "string", "Water, where its name is shared."),
        CsvField("locationID", "string", "The agency's number of the water, where its name is shared."),
        CsvField("decimalLatitude", "number", "Left blank."),
        CsvField("decimalLongitude", "number", "Left blank."),
        CsvField(
            "dataGeneralizations", "string", "What of the place is told less exactly than the log has it."
        ),
        CsvField("informationWithheld", "string", "What the log has and the archive does not."),
        CsvField("eventRemarks", "string", "What is incomplete, and what the effort holds."),
    ),
)

OCCURRENCES = CsvTable(
    "occurrence",
    "a row of Catch with fish, or a species of which the log says that none was caught",
    (
        CsvField("eventID", "string", "Identifier of the trip."),
        CsvField("occurrenceID", "string", "Identifier of the row."),
        CsvField("basisOfRecord", "string", "HumanObservation."),
        CsvField("occurrenceStatus", "string", "detected, or notDetected where the log says none."),
        CsvField("individualCount", "integer", "Fish; 0 where none was caught.", "fish"),
        CsvField("scientificName", "string", "Latin name, where one is certain."),
        CsvField("scientificNameID", "string", "ITIS number of the name, where it is confirmed."),
        CsvField("taxonRank", "string", "Rank of the Latin name."),
        CsvField("vernacularName", "string", "Common name."),
        CsvField("taxonRemarks", "string", "What other lists call it."),
        CsvField("recordedBy", "string", "Left blank."),
    ),
)

MEASUREMENTS = CsvTable(
    "measurementorfact",
    "a length, a weight or a fate of a row of Catch, or something read or counted on a trip",
    (
        CsvField("eventID", "string", "Identifier of the trip."),
        CsvField("occurrenceID", "string", "Identifier of the row of Catch; blank for a reading."),
        CsvField("measurementID", "string", "Identifier of the measurement."),
        CsvField("measurementType", "string", "total length, weight, fate, water temperature ..."),
        CsvField("measurementValue", "string", "The value; of a fate kept or released."),
        CsvField("measurementUnit", "string", "mm, g, fish, °C, m or m/s."),
        CsvField("measurementDeterminedDate", "string", "When a reading was taken, in local time."),
        CsvField("measurementMethod", "string", "measured or estimated, where the log says."),
        CsvField("measurementRemarks", "string", "Of how many fish alike."),
    ),
)

EVENT_FILE: Final = ArchiveFile(EVENTS, f"{TERMS}Event")
OCCURRENCE_FILE: Final = ArchiveFile(OCCURRENCES, f"{TERMS}Occurrence")
# Beside an event core only this class of rows may name the occurrence that was measured: in the standard's
# own MeasurementOrFact a fish's length would be the trip's. Its columns are all terms of the standard.
MEASUREMENT_FILE: Final = ArchiveFile(
    MEASUREMENTS, "http://rs.iobis.org/obis/terms/ExtendedMeasurementOrFact"
)

CORE: Final = EVENT_FILE
EXTENSIONS: Final = (OCCURRENCE_FILE, MEASUREMENT_FILE)
