"""Fish: what they are, which technique they belong to, and what every trip and technique landed."""

from collections import Counter
from collections.abc import Iterable, Sequence
from dataclasses import dataclass, field

from tests.reference.effort import Stint
from tests.reference.log import Cell, Count, Names, Notes, Row, Rows, Unread, known, table_rows, whole
from tests.reference.trips import Links, Trip

BLACK_BASS = {"largemouth bass", "smallmouth bass", "spotted bass"}
UNSPECIFIED = "black bass"
NO_FISH = "none"


@dataclass
class Fish:
    """A row of Catch that is used; no technique where none is given."""

    trip: Trip
    technique: str
    species: str
    fish: int
    fate: str
    counted: bool


@dataclass
class Pair:
    """A technique on a trip."""

    trip: Trip
    technique: str
    stints: list[Stint] = field(default_factory=list)
    rows: Counter[str] = field(default_factory=Counter)
    """Fish on rows of Catch, of the species counted, by fate."""

    @property
    def on_rows(self) -> int:
        return sum(self.rows.values())

    @property
    def tally(self) -> int | None:
        """What the stints' Landed add up to; None where nothing was typed."""
        typed = [stint.landed for stint in self.stints if stint.landed is not None]
        return sum(typed) if typed else None

    @property
    def fish(self) -> int:
        return max(self.tally or 0, self.on_rows)

    @property
    def surplus(self) -> int:
        """Fish of the tally that no row describes."""
        return self.fish - self.on_rows

    @property
    def fates(self) -> Counter[str]:
        return self.rows + Counter({"unknown": self.surplus})

    @property
    def missed(self) -> int | None:
        typed = [stint.missed for stint in self.stints]
        return None if None in typed or not typed else sum(count for count in typed if count is not None)

    @property
    def rod_hours(self) -> float:
        return sum(stint.rod_hours or 0.0 for stint in self.stints)

    @property
    def usable(self) -> bool:
        """Whether every stint has usable effort."""
        return bool(self.stints) and all(stint.rod_hours is not None for stint in self.stints)

    @property
    def in_rates(self) -> bool:
        return self.usable and self.trip.logged


class Counted:
    """Which fish a row means, and whether the rates count it."""

    def __init__(self, settings: Row) -> None:
        listed = str(known(settings, "species_counted") or "")
        self.listed = {part.strip().casefold() for part in listed.split(";") if part.strip()}
        self.black_bass_only = bool(self.listed) and self.listed <= BLACK_BASS | {UNSPECIFIED}
        self.bass_means = known(settings, "bass_means")

    def species(self, typed: Cell) -> str | None:
        """Return the fish a word means, None for a word that means none or several."""
        if typed is None or isinstance(typed, Unread):
            return None
        word = str(typed).strip().casefold()
        if word != "bass":
            return word
        return str(self.bass_means) if self.bass_means else UNSPECIFIED if self.black_bass_only else None

    def counts(self, species: str) -> bool:
        if not self.listed or species in self.listed:
            return True
        if species == UNSPECIFIED:
            return bool(self.listed & BLACK_BASS)
        return species in BLACK_BASS and UNSPECIFIED in self.listed


def read_catch(
    rows: Rows, links: Links, names: Names, settings: Row, count: Count, notes: Notes
) -> list[Fish]:
    """Return the fish of a log, rows that say there was none included; counts its rows."""
    counted = Counted(settings)
    fish: list[Fish] = []
    for row in table_rows(rows, count):
        trip = links.of(row)
        if trip is not None:
            trip.fish_written = True
        species = counted.species(row.get("species"))
        if trip is None or species is None:
            count.set_aside += 1
            notes.rules["fish of unknown kind"] += trip is not None
            continue
        count.used += 1
        typed = known(row, "technique")
        technique = "" if typed is None else names.of(typed)
        count_of = whole(row, "count")
        landed = 0 if species == NO_FISH else 1 if count_of is None else count_of
        fate = str(known(row, "fate") or known(settings, "fate_if_blank") or "unknown")
        fish.append(Fish(trip, technique, species, landed, fate, counted.counts(species)))
        notes.rules["species not counted"] += landed > 0 and not fish[-1].counted
        notes.rules["bass as black bass"] += row["species"] == "bass" and species == UNSPECIFIED
    return fish


@dataclass
class TripCatch:
    """Everything one trip landed: by technique, and on rows that name no technique."""

    trip: Trip
    pairs: dict[str, Pair]
    loose: Counter[str] = field(default_factory=Counter)
    """Counted fish on rows without a technique, by fate."""

    @property
    def beyond(self) -> int:
        """Fish without a technique that no tally holds already: outside the rates, inside the totals."""
        return max(0, sum(self.loose.values()) - sum(pair.surplus for pair in self.pairs.values()))

    @property
    def fish(self) -> int:
        return sum(pair.fish for pair in self.pairs.values()) + self.beyond

    @property
    def fates(self) -> Counter[str]:
        """Fates of all its fish; what a row without a technique says of a tallied fish is known of it."""
        said = sum((pair.rows for pair in self.pairs.values()), Counter()) + self.loose
        return said + Counter({"unknown": self.fish - sum(said.values())})

    @property
    def in_rates(self) -> list[Pair]:
        return [pair for pair in self.pairs.values() if pair.in_rates]


def by_trip(
    trips: Iterable[Trip], stints: Sequence[Stint], fish: Sequence[Fish], notes: Notes
) -> list[TripCatch]:
    """Share out stints and fish to trips and techniques."""
    catches = {trip.name: TripCatch(trip, {}) for trip in trips}
    for stint in stints:
        catches[stint.trip.name].pairs.setdefault(
            stint.technique, Pair(stint.trip, stint.technique)
        ).stints.append(stint)
    only = {name: next(iter(catch.pairs)) for name, catch in catches.items() if len(catch.pairs) == 1}
    for row in fish:
        catch = catches[row.trip.name]
        if not row.counted or not row.fish:
            continue
        technique = row.technique or only.get(row.trip.name, "")
        if technique:
            pair = catch.pairs.setdefault(technique, Pair(row.trip, technique))
            pair.rows[row.fate] += row.fish
            notes.rules["only technique"] += not row.technique
        else:
            catch.loose[row.fate] += row.fish
    for catch in catches.values():
        _note(catch, notes)
    return [*catches.values()]


def _note(catch: TripCatch, notes: Notes) -> None:
    if catch.trip.logged and not catch.trip.fish_written:
        notes.found["no_fish_written"] += 1
    for pair in catch.pairs.values():
        notes.found["tally_less"] += pair.tally is not None and pair.tally < pair.on_rows
        notes.rules["tally more than rows"] += (
            pair.tally is not None and pair.surplus > 0 and pair.on_rows > 0
        )
        notes.rules["fish without effort"] += not pair.stints and pair.on_rows > 0
        notes.rules["pair excluded with its fish"] += (
            bool(pair.stints) and not pair.in_rates and pair.fish > 0
        )
        notes.rules["pair half usable"] += (
            0 < sum(stint.rod_hours is None for stint in pair.stints) < len(pair.stints)
        )
    tallied = any(pair.tally is not None for pair in catch.pairs.values())
    notes.rules["loose fish on tallies"] += tallied and sum(catch.loose.values()) > catch.beyond
    notes.rules["loose fish beyond tallies"] += tallied and catch.beyond > 0
    notes.rules["loose fish without tallies"] += not tallied and catch.beyond > 0
