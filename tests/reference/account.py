"""A whole log, accounted for: what every group fished and landed, and where every row and fish went."""

from collections import defaultdict
from collections.abc import Callable, Hashable, Iterable
from dataclasses import dataclass

from tests.reference.catch import Pair, by_trip, read_catch
from tests.reference.effort import Stint, read_effort
from tests.reference.intervals import Range, Spread, Totals, pooled_spread, rate_range
from tests.reference.log import Count, Log, Names, Notes
from tests.reference.trips import Links, Trip, Trips

Measure = Callable[[Pair], int]


@dataclass
class Group:
    """Pairs in the rates that are reported on one line, with the trips they come from."""

    pairs: list[Pair]
    spread: Spread

    @property
    def trips(self) -> dict[str, Trip]:
        return {pair.trip.name: pair.trip for pair in self.pairs}

    @property
    def rod_hours(self) -> float:
        return sum(pair.rod_hours for pair in self.pairs)

    @property
    def boat_hours(self) -> float:
        return sum(trip.boat_hours for trip in self.trips.values())

    def fish(self, measure: str) -> int:
        return sum(MEASURES[measure](pair) for pair in self.pairs)

    def range(self, measure: str) -> Range:
        return rate_range(by_trip_totals(self.pairs, MEASURES[measure]), self.spread)

    @property
    def bitten(self) -> "Group":
        """The group without the pairs that leave missed bites unwritten on a stint."""
        return Group([pair for pair in self.pairs if pair.missed is not None], self.spread)


def by_trip_totals(pairs: Iterable[Pair], measure: Measure) -> Totals:
    """Catch and effort summed to trips, the unit of every variance."""
    catch: dict[str, float] = defaultdict(float)
    effort: dict[str, float] = defaultdict(float)
    for pair in pairs:
        catch[pair.trip.name] += measure(pair)
        effort[pair.trip.name] += pair.rod_hours
    return [(catch[name], effort[name]) for name in effort]


MEASURES: dict[str, Measure] = {
    "fish": lambda pair: pair.fish,
    "kept": lambda pair: pair.fates["kept"],
    "released": lambda pair: pair.fates["released"],
    "unknown": lambda pair: pair.fates["unknown"],
    "bites": lambda pair: pair.fish + (pair.missed or 0),
}


class Account:
    """Everything the reference says about a log."""

    def __init__(self, log: Log) -> None:
        self.notes = Notes()
        self.counts = {sheet: Count() for sheet in ("Trips", "Effort", "Catch")}
        for sheet, rows in (("Season", log.settings), ("Techniques", log.techniques), ("Waters", log.waters)):
            self.counts[sheet] = Count(used=len(rows))
        self.techniques = Names(log.techniques, "technique")
        self.waters = Names(log.waters, "water")
        trips = Trips(log, self.waters, self.counts["Trips"], self.notes)
        self.stints: list[Stint] = read_effort(
            log.effort, Links(trips, self.notes), self.techniques, self.counts["Effort"], self.notes
        )
        self.fish = read_catch(
            log.catch,
            Links(trips, self.notes),
            self.techniques,
            log.settings,
            self.counts["Catch"],
            self.notes,
        )
        self.catches = by_trip(trips.used, self.stints, self.fish, self.notes)
        self.pairs = [pair for catch in self.catches for pair in catch.in_rates]
        techniques = self._grouped(lambda pair: pair.technique).values()
        self.spread = pooled_spread(by_trip_totals(pairs, MEASURES["fish"]) for pairs in techniques)

    def style(self, technique: str) -> str:
        return str(self.techniques.cell(technique, "style") or "not given")

    def groups(self, of: Callable[[Pair], Hashable]) -> dict[Hashable, Group]:
        """Return the pairs in the rates, grouped."""
        return {key: Group(pairs, self.spread) for key, pairs in self._grouped(of).items()}

    def _grouped(self, of: Callable[[Pair], Hashable]) -> dict[Hashable, list[Pair]]:
        grouped: dict[Hashable, list[Pair]] = defaultdict(list)
        for pair in self.pairs:
            grouped[of(pair)].append(pair)
        return grouped
