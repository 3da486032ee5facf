"""A choice as a person types it, to the number of its label."""

from collections.abc import Sequence

from reporter.schema.bands import MONTHS, WATER_TEMP, WIND_SPEED, time_of_year
from reporter.schema.choices import ANY
from reporter.schema.fronts import DAY_TYPES
from reporter.schema.log import folded
from reporter.schema.sheets.readings import CLEARNESS, SKY_SEEN
from reporter.schema.units import System, usual_unit
from reporter.tidy.measures import read_measure
from reporter.tidy.near import nearest
from reporter.tidy.words import NotRead

_SPANS = {"water_temperature": WATER_TEMP, "wind_speed": WIND_SPEED}
_OTHER_WORDS = {"clarity": CLEARNESS.same_as, "sky": SKY_SEEN.same_as}


def choice_number(key: str, text: str, labels: Sequence[str], system: System) -> int | NotRead:
    """Return the number of a choice (0 for any) from its label, another word for it, a month or a measure.

    A temperature or wind speed without a unit is in the log's own units.
    """
    if folded(text) in ("", folded(ANY)):
        return 0
    wanted = folded(_OTHER_WORDS.get(key, {}).get(text.strip().casefold(), text))
    for number, label in enumerate(labels, start=1):
        if folded(label) == wanted:
            return number
    return _otherwise(key, text, wanted, labels, system)


def _otherwise(key: str, text: str, wanted: str, labels: Sequence[str], system: System) -> int | NotRead:
    if key == "time_of_year":
        for month, name in enumerate(MONTHS, start=1):
            if wanted in (folded(name), folded(name)[:3]):
                return time_of_year(month) + 1
    if key == "day_type":
        for number, day_type in enumerate(DAY_TYPES, start=1):
            if folded(day_type) == wanted and number <= len(labels):
                return number
    if key in _SPANS:
        span = _SPANS[key]
        value = read_measure(text, span.quantity, usual_unit(span.quantity, system), None)
        if not isinstance(value, NotRead):
            return span.place(value, system) + 1
    parts = [number for number, label in enumerate(labels, start=1) if wanted in folded(label)]
    if len(parts) == 1:
        return parts[0]
    near = nearest(text, list(labels))
    closest = f" The closest is '{near}'." if near else ""
    return NotRead(f"'{text}' is none of them", f"It can be {', '.join((ANY, *labels))}.{closest}")
