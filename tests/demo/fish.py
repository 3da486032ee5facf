"""Catch of a demo season: species, lengths, weights and fates of the fish that are written down."""

from numpy.random import RandomState

from reporter.books.blocks import Cell
from reporter.schema.units import System
from tests.demo import hand
from tests.demo.days import Day
from tests.demo.simulate import Season
from tests.demo.stints import BOTH, ROWS, Stint

_BASS: tuple[tuple[tuple[str, float], ...], ...] = (
    (("largemouth bass", 0.84), ("spotted bass", 0.12), ("smallmouth bass", 0.04)),
    (("largemouth bass", 0.66), ("spotted bass", 0.34)),
    (("largemouth bass", 1.0),),
    (("largemouth bass", 0.55), ("smallmouth bass", 0.35), ("spotted bass", 0.10)),
)
"""Black bass of each water."""

_OTHERS = ("bluegill", "black crappie", "channel catfish", "chain pickerel")

_MEAN_MM = {"largemouth bass": 350.0, "spotted bass": 315.0, "smallmouth bass": 330.0}
_OTHER_MM = {"bluegill": 180.0, "black crappie": 260.0, "channel catfish": 420.0, "chain pickerel": 430.0}
_SD = 0.19
_SHORTEST_MM = 160.0

# Standard weight log10 W (g) = a + b log10 TL (mm): Henson 1991, Wiens et al. 1996, Kolander et al. 1993, as
# gathered in an open data table of fisheries analysis.
_STANDARD_WEIGHT = {
    "largemouth bass": (-5.528, 3.273),
    "spotted bass": (-5.392, 3.215),
    "smallmouth bass": (-5.329, 3.200),
}
_CONDITION, _CONDITION_SD = 0.94, 0.08
_SHORTEST_WEIGHED_MM = 300.0
_BIG_MM = 400.0


class _Basket:
    """The rows of one trip; no two of them alike."""

    def __init__(self, rng: RandomState, season: Season, day: Day, system: System) -> None:
        self.rng = rng
        self.day = day
        self.system = system
        self.water = int(season.trips.water[day.index])
        self.rows: list[dict[str, Cell]] = []
        self.names_anglers = bool(day.clients) and hand.chance(rng, 0.45)
        self.anglers = (*day.clients, "guide") if season.trips.guide_fished[day.index] else day.clients

    def add(self, row: dict[str, Cell]) -> None:
        if row in self.rows:
            twin = self.rows[self.rows.index(row)]
            twin["count"] = int(str(twin.get("count") or 1)) + int(str(row.get("count") or 1))
        else:
            self.rows.append(row)

    def bass(self, technique: str, window: tuple[int, int] | None, mm: float, *, measure: bool) -> None:
        species = self._species()
        row: dict[str, Cell] = {"technique": technique, "species": species}
        if measure:
            mm *= _MEAN_MM[species] / _MEAN_MM["largemouth bass"]
            row["length_mm"] = hand.length(self.rng, mm, self.system)
            if mm >= _SHORTEST_WEIGHED_MM and hand.chance(self.rng, 0.55):
                row["weight_g"] = hand.weight(self.rng, self._grams(species, mm), self.system)
            row["measured"] = "estimated" if hand.chance(self.rng, 0.1) else None
            if hand.chance(self.rng, 0.35):
                row["time"] = self._time(window)
        row["fate"] = self._fate(species, mm if measure else 0.0)
        if self.names_anglers:
            row["angler"] = hand.one_of(self.rng, self.anglers)
        self.add(row)

    def other(self, technique: str) -> None:
        species = hand.one_of(self.rng, _OTHERS)
        row: dict[str, Cell] = {"technique": technique, "species": species, "fate": "released"}
        if hand.chance(self.rng, 0.5):
            mm = _OTHER_MM[species] * self.rng.uniform(0.85, 1.15)
            row["length_mm"] = hand.length(self.rng, mm, self.system)
        self.add(row)

    def _species(self) -> str:
        draw, total = self.rng.random_sample(), 0.0
        for name, share in _BASS[self.water]:
            total += share
            if draw < total:
                return name
        return _BASS[self.water][0][0]

    def _grams(self, species: str, mm: float) -> float:
        a, b = _STANDARD_WEIGHT[species]
        lean = max(self.rng.normal(_CONDITION, _CONDITION_SD), 0.7)
        return float(10**a * mm**b * lean)

    def _time(self, window: tuple[int, int] | None) -> Cell:
        start, end = window or (self.day.start, self.day.end)
        return hand.clock(int(self.rng.randint(start // 5 + 1, end // 5)) * 5)

    def _fate(self, species: str, mm: float) -> str | None:
        if species == "spotted bass" and mm and hand.chance(self.rng, 0.25):
            return "kept"
        return "released" if hand.chance(self.rng, 0.85) else None


def catch_rows(
    rng: RandomState, season: Season, day: Day, stints: list[Stint], written: str, system: System
) -> list[dict[str, Cell]]:
    """Every fish where they are written as rows, the big ones where they are tallied."""
    basket = _Basket(rng, season, day, system)
    every = written in (ROWS, BOTH)
    for stint in stints:
        for _ in range(stint.catch):
            mm = max(rng.normal(1.0, _SD) * _MEAN_MM["largemouth bass"], _SHORTEST_MM)
            big = mm >= _BIG_MM
            if every or big:
                basket.bass(stint.name, stint.window, mm, measure=big or hand.chance(rng, 0.75))
    for _ in range(int(rng.poisson(0.35))):
        basket.other(stints[0].name)
    if not basket.rows and written == ROWS:
        basket.add({"species": "none"})
    if basket.rows:
        basket.rows[0] = {"trip": day.number, **basket.rows[0]}
    return basket.rows
