"""What was found about several logs: what concerns a file of weather is said once."""

from collections.abc import Sequence

from reporter.compute.season import Season
from reporter.schema.findings.weather import WEATHER
from reporter.schema.log import SHEETS
from reporter.schema.problems import Problem

_CODES = frozenset(finding.code for finding in WEATHER)
_SHEETS = frozenset(sheet.name for sheet in SHEETS)
_NO_DATE = "weather_other_dates"


def said_once(seasons: Sequence[Season]) -> tuple[Season, ...]:
    """Return seasons without what an earlier one says of the same weather file.

    That a station serves no date is said only where it serves none of any log.
    """
    known: set[Problem] = set()
    made = []
    for season in seasons:
        kept = [found not in known and not _serves(found, seasons) for found in season.problems]
        here = {found for found, keep in zip(season.problems, kept, strict=True) if keep}
        known |= {found for found in here if of_weather_file(found)}
        made.append(
            season._replace(
                problems=[found for found in season.problems if found in here],
                fixes=[(found, won) for found, won in season.fixes if found in here],
            )
        )
    return tuple(made)


def of_weather_file(found: Problem) -> bool:
    """Whether a problem is about an hourly file, which is of no one log."""
    return found.code in _CODES and found.sheet not in _SHEETS


def _serves(found: Problem, seasons: Sequence[Season]) -> bool:
    """Whether a station that serves no date of one log serves some of another."""
    return found.code == _NO_DATE and any(
        found.said not in {other.said for other in season.problems} for season in seasons
    )
