"""What a client's copy is made of. Nothing that these hold is anybody else's, or the guide's own."""

import datetime as dt
import math
from dataclasses import dataclass, field
from typing import NamedTuple

NAN = math.nan


@dataclass(frozen=True, slots=True)
class Caught:
    """Fish alike: a row of Catch, or fish that only a tally tells.

    own: whether they are the client's; else they are unnamed fish of his party. species: house code, "" where
    no row tells it. fate: kept, released or unknown. length_mm and weight_g are NaN where not written; a
    weight is that of one fish. counted: whether they are of the species that the season counts. tallied:
    whether only a tally tells them.
    """

    own: bool
    technique: str
    species: str
    count: int
    fate: str = "unknown"
    length_mm: float = NAN
    weight_g: float = NAN
    estimated: bool = False
    counted: bool = True
    tallied: bool = False


class TiedOn(NamedTuple):
    """What was tied on for him: as on Effort, with the technique's rigging and what to buy for it."""

    technique: str
    variant: str = ""
    retrieve: str = ""
    size: str = ""
    colour: str = ""
    rigging: str = ""
    tackle_list: str = ""


class DayWeather(NamedTuple):
    """A day's water and weather; NaN or "" where not known. wind_from_deg: LIGHT_WIND where it was light."""

    water_temp_c: float = NAN
    clarity: str = ""
    water_level: str = ""
    air_low_c: float = NAN
    air_high_c: float = NAN
    sky: str = ""
    wind_from_deg: float = NAN
    wind_speed_ms: float = NAN


@dataclass(frozen=True, slots=True)
class Day:
    """A trip as one client of it may read it.

    water: its name, its masked name, or "" where neither may be told. begin_min: only to order trips of a
    day. hours: fished. alone: whether he was the only client, so that unnamed fish may be his bests. blank:
    whether the log says that nothing at all was landed; without fish of his and without that, nobody knows.
    """

    date: dt.date
    begin_min: float
    water: str
    hours: float
    alone: bool
    blank: bool = False
    weather: DayWeather = field(default_factory=DayWeather)
    words: str = ""
    caught: tuple[Caught, ...] = ()
    tied_on: tuple[TiedOn, ...] = ()

    @property
    def own(self) -> tuple[Caught, ...]:
        """The fish that are his."""
        return tuple(fish for fish in self.caught if fish.own)

    @property
    def party(self) -> tuple[Caught, ...]:
        """The unnamed fish of his party."""
        return tuple(fish for fish in self.caught if not fish.own)

    @property
    def his(self) -> tuple[Caught, ...]:
        """The fish that may be called his bests: his own, and where he was the only client all of them."""
        return self.caught if self.alone else self.own


class Client(NamedTuple):
    """A client with his trips in order. name: "" unless he agreed to have it printed."""

    name: str
    youth: bool
    days: tuple[Day, ...]
