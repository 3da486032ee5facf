"""A choice as a person types it, to the number of its label."""

from collections.abc import Sequence

from reporter.schema.bands import MONTHS, WATER_TEMP, WIND_SPEED, time_of_year
from reporter.schema.choices import ANY
from reporter.schema.fronts import DAY_TYPES
from reporter.schema.log import folded
from reporter.schema.sheets.readings import CLEARNESS, SKY_SEEN
from reporter.schema.sheets.readings import WATER_TEMP as READING
from reporter.schema.sheets.readings import WIND_SPEED as WIND_READING
from reporter.schema.units import System, usual_unit
from reporter.tidy.measures import read_measure
from reporter.tidy.near import nearest
from reporter.tidy.ranges import impossible
from reporter.tidy.words import NotRead, plain

_SPANS = {"water_temperature": WATER_TEMP, "wind_speed": WIND_SPEED}
_COLUMNS = {"water_temperature": READING, "wind_speed": WIND_READING}
_OTHER_WORDS = {"clarity": CLEARNESS.same_as, "sky": SKY_SEEN.same_as}


def choice_number(key: str, text: str, labels: Sequence[str], system: System) -> int | NotRead:
    """Return the number of a choice (0 for any) from its label, another word for it, a month or a measure.

    A temperature or wind speed without a unit is in the log's own units.
    """
    typed = plain(text)
    if not typed:
        return 0
    for alike in (plain, _caseless, folded):
        for number, label in enumerate((ANY, *labels)):
            if alike(label) == alike(typed) != "":
                return number
    return _otherwise(key, typed, labels, system)


def _caseless(text: str) -> str:
    return plain(text).casefold()


def _otherwise(key: str, text: str, labels: Sequence[str], system: System) -> int | NotRead:
    """Return what no label says as it stands: another word, a month, a measure, a part of one label."""
    wanted = folded(_OTHER_WORDS.get(key, {}).get(text.casefold(), text))
    words = [folded(label) for label in labels]
    if wanted in words:
        return words.index(wanted) + 1
    found = _by_kind(key, text, wanted, system)
    if found is not None:
        return found
    parts = [number for number, word in enumerate(words, start=1) if wanted and wanted in word]
    if len(parts) == 1:
        return parts[0]
    near = nearest(text, list(labels))
    closest = f" The closest is '{near}'." if near else ""
    return NotRead(f"'{text}' is none of them", f"It can be {', '.join((ANY, *labels))}.{closest}")


def _by_kind(key: str, text: str, wanted: str, system: System) -> int | NotRead | None:
    """Return the number of a month, of a type of day by its code, or of a measure; None where it is none."""
    if key == "time_of_year":
        spelled = ((folded(name), folded(name)[:3]) for name in MONTHS)
        months = [month for month, names in enumerate(spelled, start=1) if wanted in names]
        return time_of_year(months[0]) + 1 if months else None
    if key == "day_type":
        codes = [folded(day_type) for day_type in DAY_TYPES if day_type != "not_known"]
        return codes.index(wanted) + 1 if wanted in codes else None
    if key not in _SPANS:
        return None
    span = _SPANS[key]
    unit = usual_unit(span.quantity, system)
    value = read_measure(text, span.quantity, unit, None)
    if isinstance(value, NotRead):
        return None
    unlikely = impossible(value, _COLUMNS[key], unit)
    if unlikely:
        return NotRead(f"'{text}' {unlikely.why}", unlikely.remedy, impossible=True)
    return span.place(value, system) + 1
