"""What the blank log starts with: the usual techniques, and hunches to try.

Common practice of the trade, no source; the lists are the guide's to edit.
"""

from dataclasses import dataclass, field
from typing import NamedTuple

from reporter.schema.units import System


class Technique(NamedTuple):
    """A row of the sheet Techniques."""

    technique: str
    style: str
    also_called: str = ""
    rigging: str = ""


TECHNIQUES: tuple[Technique, ...] = (
    Technique(
        "Shallow crankbait",
        "moving",
        "squarebill; shallow crank",
        "flat-sided or round; rattling or silent",
    ),
    Technique(
        "Bladed jig",
        "moving",
        "vibrating jig",
        "3/8 to 1/2 oz, skirt and soft trailer; smaller for small water and small forage",
    ),
    Technique("Jerkbait", "moving", "suspending jerkbait", "twitch and pause; longer pauses on tough days"),
    Technique(
        "Lipless crankbait",
        "moving",
        "lipless; rattle bait",
        "burn and rip through grass; pull and drop off the bottom in cold water",
    ),
    Technique(
        "Umbrella rig",
        "moving",
        "castable rig",
        "several swimbaits; many places limit hooks or lures: check the local rules",
    ),
    Technique(
        "Stick worm", "slow", "soft stickbait", "weightless Texas rig on a 3/0 wide-gap hook; wacky; neko"
    ),
    Technique("Shaky head", "slow", "shakey head", "finesse worm on a light round or stand-up head"),
    Technique("Drop shot", "slow", "", "small worm that hangs level, 6 to 12 in above the weight"),
    Technique("Mushroom-head rig", "slow", "ned rig", "short buoyant stick on a light head, hook open"),
    Technique(
        "Casting jig",
        "slow",
        "flipping jig; pitching jig; skirted jig",
        "1/2 oz, compact head, trimmed trailer",
    ),
    Technique("Spinnerbait", "moving"),
    Technique("Swimbait", "moving"),
    Technique("Topwater", "moving"),
    Technique("Deep crankbait", "moving"),
    Technique("Swim jig", "moving"),
    Technique("Carolina rig", "slow"),
    Technique("Tube", "slow"),
)

RODS_PER_ANGLER = 1
"""Where Season does not say."""


@dataclass(frozen=True, slots=True)
class Hunch:
    """A rule of thumb that many guides hold, as a row of Hunches. None has a source."""

    hunch: str
    compare: str
    this: str
    against: str
    with_technique: str = ""
    when: dict[System, str] = field(default_factory=dict)
    measure: str = "landed"


def _in_both(text: str) -> dict[System, str]:
    return {"us": text, "metric": text}


_BEHIND = _in_both("day 1 or 2 after a front")

HUNCHES: tuple[Hunch, ...] = (
    Hunch("Slow holds up better behind a front", "style", "slow", "moving", when=_BEHIND),
    Hunch("Behind a front fish sit on hard cover", "cover", "dock; timber; rock", "", when=_BEHIND),
    Hunch(
        "Flat sides in cold water",
        "variant",
        "flat-sided",
        "round",
        "Shallow crankbait",
        {"us": "water under 50 °F", "metric": "water under 10 °C"},
    ),
    Hunch(
        "Stop and go in spring",
        "retrieve",
        "stop and go",
        "steady",
        "Shallow crankbait",
        {"us": "water 50 to 60 °F", "metric": "water 10 to 16 °C"},
    ),
    Hunch("Rattles in stained water", "variant", "rattling", "silent", when=_in_both("stained")),
    Hunch("Dark in stained water", "colour", "dark", "light; natural", when=_in_both("stained")),
    Hunch("Lipless hangs up more", "technique", "Lipless crankbait", "Bladed jig", measure="hang-ups"),
)
"""Ready examples of the blank log. Common practice, no source."""

NO_SOURCE = " (common practice, no source)"
"""Ends the words of every such hunch."""
