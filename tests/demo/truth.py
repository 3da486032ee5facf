"""The demo season's truth: true catch rates, and the rule by which techniques are tied on.

Fish are caught as a Poisson number with mean rate x effort x day effect, where the day effect of a trip is a
gamma number with mean 1 and coefficient of variation `DAY_CV`, shared by all techniques of the trip, and

    rate = the technique's rate x effect of the day on its style
           x effect of the water temperature on its style x effect of the water.

Picking rule: on a trip `n` techniques are tied on. On an ordinary day each is a moving one with chance
`MOVING_SHARE`, on a post-frontal day rarely. Within a style those whose temperature window holds are drawn
without replacement, weighted by clarity. Which technique gets how much of the trip has nothing to do with
what it catches. So slow techniques are fished mostly on hard days, and their plain rate suffers.

A true rate is expected fish / expected rod-hours under this rule (`true_rates` of `tests.demo.simulate`).
"""

from dataclasses import dataclass
from typing import Literal

Style = Literal["moving", "slow"]
STYLES: tuple[Style, ...] = ("moving", "slow")


@dataclass(frozen=True, slots=True)
class Technique:
    """name, style; rate: fish per rod-hour on an ordinary day; window: water °F in which it is tied on.

    weights: how readily it is tied on in clear, in lightly stained and in stained or muddy water.
    """

    name: str
    style: Style
    rate: float
    window: tuple[float, float]
    weights: tuple[float, float, float]


TECHNIQUES: tuple[Technique, ...] = (
    Technique("Shallow crankbait", "moving", 0.86, (50, 99), (0.6, 1.0, 1.5)),
    Technique("Bladed jig", "moving", 0.82, (48, 99), (0.7, 1.0, 1.4)),
    Technique("Jerkbait", "moving", 0.76, (0, 66), (1.5, 1.0, 0.5)),
    Technique("Lipless crankbait", "moving", 0.70, (0, 72), (0.9, 1.0, 1.2)),
    Technique("Topwater", "moving", 0.80, (66, 99), (1.0, 1.0, 1.0)),
    Technique("Drop shot", "slow", 1.20, (0, 99), (1.6, 1.1, 0.7)),
    Technique("Mushroom-head rig", "slow", 1.14, (0, 80), (1.3, 1.0, 0.8)),
    Technique("Stick worm", "slow", 1.10, (58, 99), (1.0, 1.0, 1.0)),
    Technique("Casting jig", "slow", 0.94, (0, 99), (0.8, 1.0, 1.3)),
)

MOVING_SHARE = {"ordinary": 0.83, "post-frontal": 0.20}

POST_FRONTAL_EFFECT: dict[Style, float] = {"moving": 0.22, "slow": 0.30}
"""Post-frontal against ordinary days: moving techniques lose most."""

BAND_EDGES_F = (50.0, 60.0, 70.0, 80.0)
BAND_EFFECT: dict[Style, tuple[float, ...]] = {
    "moving": (0.50, 0.85, 1.15, 1.00, 0.85),
    "slow": (0.55, 0.90, 1.10, 1.00, 0.90),
}
"""Effect of the water temperature, by band, the first below 50 °F."""

WATERS: tuple[str, ...] = ("Lake Arden", "Brannock Reservoir", "Otter Mere", "Hollin Pool")
WATER_EFFECT = (1.0, 0.85, 1.15, 1.0)
WATER_SHARE = (0.40, 0.26, 0.19, 0.15)

CLARITY = ("clear", "lightly stained", "stained", "muddy")
CLARITY_SHARE: tuple[tuple[float, ...], ...] = (
    (0.45, 0.40, 0.15, 0.0),
    (0.10, 0.35, 0.45, 0.10),
    (0.30, 0.50, 0.20, 0.0),
    (0.05, 0.30, 0.45, 0.20),
)
"""Chances of each clarity, water by water."""

DAY_CV = 0.6

TECHNIQUES_A_TRIP = {3: 0.35, 4: 0.45, 5: 0.20}
TRIPS = 60
