"""Pick from one log: what worked on days like the one that is asked for."""

from collections.abc import Mapping, Sequence
from pathlib import Path
from typing import TYPE_CHECKING, NamedTuple

from reporter.compute.conditions.record import stint_record
from reporter.compute.picker.choose import choice_number
from reporter.compute.picker.pick import Picked, pick
from reporter.compute.picker.record import PickRecord, pick_record
from reporter.run.season import Reading, read_season
from reporter.tidy.words import NotRead

if TYPE_CHECKING:
    from reporter.read.weather.raw import RawWeather


class Answer(NamedTuple):
    """What came of a question: the reading; the record, choices by number and the pick unless there is none.

    unread: choice -> why it cannot be read.
    """

    reading: Reading
    record: PickRecord | None
    numbers: dict[str, int]
    unread: dict[str, NotRead]
    picked: Picked | None


def ask(path: Path, asked: Mapping[str, str], weather: "Sequence[RawWeather]" = ()) -> Answer:
    """Return what a log's record says of the choices (choice -> as typed).

    Unreadable (from `reporter.read.errors`) where the file itself cannot be read. Nothing is picked where
    the log has a stop, a choice cannot be read, or no stint has usable effort.
    """
    reading = read_season(path, weather)
    season = reading.season
    if season is None:
        return Answer(reading, None, {}, {}, None)
    record = pick_record(season, stint_record(season))
    read = {key: choice_number(key, text, record.labels[key], season.system) for key, text in asked.items()}
    unread = {key: number for key, number in read.items() if isinstance(number, NotRead)}
    numbers = {key: number for key, number in read.items() if not isinstance(number, NotRead)}
    if unread or record.stints.empty:
        return Answer(reading, record, numbers, unread, None)
    kappa = float(season.spread.kappa_used)
    return Answer(reading, record, numbers, {}, pick(record, season.techniques, kappa, numbers))
