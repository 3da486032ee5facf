"""What the blank log starts with: the usual techniques.

Common practice of the trade, no source; the list is the guide's to edit.
"""

from dataclasses import dataclass


@dataclass(frozen=True, slots=True)
class Technique:
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
