"""The page that a client reads first: what he landed, what worked, his firsts and bests, a word of thanks."""

from collections.abc import Sequence

from reporter.books.blocks import Block, Cell, Chart, Field, Line, Series, Sheet, Table, Text
from reporter.books.client.bests import best_blocks
from reporter.books.client.day import setting_lines
from reporter.books.client.letter import Letter
from reporter.books.client.words import capital, hours_words, joined, species_words
from reporter.books.words import counted, day_words
from reporter.compute.clients.figures import SpeciesCount, came_on, count, species_counts
from reporter.compute.clients.model import Caught, Client, Day

_EATING = (
    "Before you eat your catch, check the local advice on eating fish from these waters. The local authority "
    "has the last word on what may be kept."
)
_NOT_THIS_TIME = "No fish came to the boat this time. It happens to everyone who fishes."
_MOST_NAMED = 3  # techniques in a sentence
_FEWEST_CHARTED, _FEWEST_WITH_FISH = 3, 2  # trips from which a chart tells more than a sentence


def first_page(client: Client, letter: Letter) -> Sheet:
    """Return the first page; it prints on one."""
    counts = species_counts(client.days)
    kept = any(row.own.kept or row.party.kept for row in counts)
    blocks: list[Block] = [_head(client, letter)]
    if counts:
        blocks += [_fish(counts), *_what_worked(client), *best_blocks(client, letter)]
        blocks += _chart(client)
    elif all(day.blank for day in client.days):
        blocks.append(Text((Line(_NOT_THIS_TIME, "lead"),)))
    if len(client.days) == 1:
        blocks += _setting(client.days[0], letter)
    blocks.append(_close(letter, kept=kept))
    return Sheet(_name(client), tuple(blocks), group="me", pages_tall=1)


def _name(client: Client) -> str:
    return "Your day" if len(client.days) == 1 else "Your days"


def _head(client: Client, letter: Letter) -> Text:
    whose = client.name or ("our youth angler" if client.youth else "")
    parts = [f"for {whose}" if whose else "", f"with {letter.guide}" if letter.guide else ""]
    said = capital(" ".join(part for part in parts if part))
    lead = [Line(said, "lead")] if said else []
    return Text(
        (Line(f"{_name(client)} on the water", "title"), *lead, Line(_when(client.days, letter), "lead"))
    )


def _when(days: Sequence[Day], letter: Letter) -> str:
    first, last = (day_words(day.date, letter.system) for day in (days[0], days[-1]))
    hours = hours_words(sum(day.hours for day in days))
    if len(days) == 1:
        where = f", {days[0].water}" if days[0].water else ""
        return f"{first}{where}, {hours} fished."
    span = f"on {first}" if first == last else f"from {first} to {last}"
    return f"{counted(len(days), 'trip')}, {hours} fished, {span}."


def _fish(counts: Sequence[SpeciesCount]) -> Table:
    """Return the fish by species: his own, and his party's that carry no name; only what there is."""
    fields = [Field("species", "Fish", width=26.0)]
    columns: dict[str, Sequence[Cell]] = {"species": [capital(species_words(row.species)) for row in counts]}
    total: dict[str, Cell] = {"species": "All"}
    for key, heading, fish in (
        ("own", "Yours", [row.own.fish for row in counts]),
        ("own_kept", "Yours kept", [row.own.kept for row in counts]),
        ("own_released", "Yours released", [row.own.released for row in counts]),
        ("party", "Your party's", [row.party.fish for row in counts]),
        ("party_kept", "Party's kept", [row.party.kept for row in counts]),
        ("party_released", "Party's released", [row.party.released for row in counts]),
    ):
        if any(fish):
            fields.append(Field(key, heading, "whole", width=11.0))
            columns[key] = [number or None for number in fish]
            total[key] = sum(fish)
    return Table(
        "fish", tuple(fields), columns, title="What was landed", total=total if len(counts) > 1 else {}
    )


def _what_worked(client: Client) -> list[Text]:
    """Return what his fish came on, and his party's."""
    every = [fish for day in client.days for fish in day.caught]
    sentences = [
        _came_on("your", [fish for fish in every if fish.own]),
        _came_on("your party's", [fish for fish in every if not fish.own]),
    ]
    lines = [Line(sentence, "lead") for sentence in sentences if sentence]
    return [Text((Line("What worked", "heading"), *lines))] if lines else []


def _came_on(whose: str, fish: Sequence[Caught]) -> str:
    """Return "6 of your 9 came on the Stick worm"; "" where no technique is written."""
    total, techniques = count(fish), came_on(fish)
    if not techniques:
        return ""
    best, number = techniques[0]
    if number == total:
        return f"{_all_of(whose, total)} came on the {best}."
    on = [f"on the {best}", *(f"{other} on the {name}" for name, other in techniques[1:_MOST_NAMED])]
    return f"{number} of {whose} {total} came {joined(on)}."


def _all_of(whose: str, fish: int) -> str:
    if fish == 1:
        return f"{capital(whose)} fish"
    return f"Both of {whose} fish" if fish == 2 else f"All {fish} of {whose} fish"


def _chart(client: Client) -> list[Chart]:
    """Return fish by trip as a chart, where there are trips enough to see something.

    One bar a trip for him and his party: two side by side would say who caught less.
    """
    fish = [count(day.caught) for day in client.days]
    if len(fish) < _FEWEST_CHARTED or sum(map(bool, fish)) < _FEWEST_WITH_FISH:
        return []
    party = any(day.party for day in client.days)
    title = "Fish of you and your party, trip by trip" if party else "Your fish, trip by trip"
    series = Series("Fish landed", "day.date", "day.fish")
    return [Chart("column", title, "Trip", "Fish landed", (series,), rows=11, alt=title)]


def _setting(day: Day, letter: Letter) -> list[Text]:
    lines = [Line(said, "lead") for said in setting_lines(day, letter)]
    return [Text((Line("How it was", "heading"), *lines))] if lines else []


def _close(letter: Letter, *, kept: bool) -> Text:
    lines = [Line(letter.thanks, "lead")]
    if letter.contact:
        lines.append(Line(letter.contact, "lead"))
    if kept:
        lines.append(Line(_EATING, "caution"))
    return Text(tuple(lines))
