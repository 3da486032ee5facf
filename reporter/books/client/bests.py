"""Firsts and bests, and the best five together."""

import math

from reporter.books.blocks import Line, Text
from reporter.books.client.letter import Letter
from reporter.books.client.words import (
    capital,
    length_words,
    size_words,
    species_words,
    weight_words,
)
from reporter.books.words import day_words
from reporter.compute.clients.figures import BEST_TOGETHER, Best, best_together, bests, firsts
from reporter.compute.clients.model import Client

_UNNAMED = "Fish without a name count here on days when yours was the only booking."
_NUMBERS = {5: "five"}
_MOST = 6  # kinds of fish: more would make the page too small to read on a phone


def best_blocks(client: Client, letter: Letter) -> list[Text]:
    """Return his best fish of each kind, across several trips his firsts too, and the best five together."""
    several = len(client.days) > 1
    best = bests(client)[:_MOST]
    lines = [Line(_best(one, letter), "lead") for one in best] + _together(client, letter)
    if not all(one.fish.own for one in best):
        lines.append(Line(_UNNAMED, "note"))
    blocks = [Text((Line("Your bests" if several else "Your best fish", "heading"), *lines))] if lines else []
    return [*blocks, *(_firsts(client, letter) if several else [])]


def _best(best: Best, letter: Letter) -> str:
    kind = capital(species_words(best.fish.species))
    on = f", on the {best.fish.technique}" if best.fish.technique else ""
    return f"{kind}: {size_words(best.fish, letter.system)}, {day_words(best.day.date, letter.system)}{on}"


def _firsts(client: Client, letter: Letter) -> list[Text]:
    first = dict(list(firsts(client).items())[:_MOST])
    said = [
        f"{capital(species_words(kind))}: {day_words(day.date, letter.system)}" for kind, day in first.items()
    ]
    heading = Line("Your firsts on these trips", "heading")
    return [Text((heading, *(Line(line, "lead") for line in said)))] if said else []


def _together(client: Client, letter: Letter) -> list[Line]:
    top = best_together(client)
    if top is None:
        return []
    sizes = [length_words(top.length_mm, letter.system)]
    sizes += [weight_words(top.weight_g, letter.system)] if not math.isnan(top.weight_g) else []
    guessed = f" ({top.estimated} of them estimated)" if top.estimated else ""
    return [Line(f"Your best {_NUMBERS[BEST_TOGETHER]} together: {', '.join(sizes)}{guessed}", "lead")]
