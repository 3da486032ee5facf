"""What every copy of a run shares: the guide's name, his lines to clients, units and paper."""

from typing import NamedTuple

from reporter.schema.units import System
from reporter.tidy.settings import Settings

_THANKS = "Thank you for coming out."


class Letter(NamedTuple):
    """The guide's name, the line of thanks, how to book again; "" where the log does not say."""

    guide: str
    thanks: str
    contact: str
    system: System


def letter_of(settings: Settings, system: System) -> Letter:
    """Return what the settings of a log say to clients."""
    return Letter(settings["guide"] or "", settings["thanks"] or _THANKS, settings["contact"] or "", system)
