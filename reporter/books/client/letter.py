"""What every copy of a run shares: the guide's name, his lines to clients, units and paper."""

from dataclasses import dataclass

from reporter.schema.species import BY_CODE
from reporter.schema.units import System
from reporter.tidy.settings import Settings

_THANKS = "Thank you for coming out."


@dataclass(frozen=True, slots=True)
class Letter:
    """The guide's name, the line of thanks, how to book again; "" where the log does not say.

    tallied: what a fish is whose kind no row tells: a bass where only black bass are counted.
    """

    guide: str
    thanks: str
    contact: str
    system: System
    tallied: str = "fish"

    def species(self, code: str) -> str:
        """Return a species' name in running text; of "" what may be said of a fish that was only tallied."""
        return BY_CODE[code].name.partition(",")[0] if code else f"{self.tallied}, kind not written"


def letter_of(settings: Settings, system: System) -> Letter:
    """Return what the settings of a log say to clients."""
    bass = settings.counted is not None and all(BY_CODE[code].black_bass for code in settings.counted)
    return Letter(
        guide=settings["guide"] or "",
        thanks=settings["thanks"] or _THANKS,
        contact=settings["contact"] or "",
        system=system,
        tallied="bass" if bass else "fish",
    )
