"""The palette for eyes that lack a kind of cone, and in black and white.

Colours are seen through the simulation of Machado, Oliveira and Fernandes 2009 (IEEE Trans. Vis. Comput.
Graph. 15:1283-1291) at full severity, by the library colorspacious; distances are those of CAM02-UCS, in
which 1 is about what can just be told. In black and white only lightness is left.
"""

import re
from itertools import combinations, pairwise
from pathlib import Path

import numpy as np
import pytest
from colorspacious import cspace_convert, deltaE

import reporter
from reporter.write.style import DUSK, HEAT_TRAITS, SERIES, TABS, WHITE, cell_properties

KINDS = ("everybody", "protanomaly", "deuteranomaly", "tritanomaly")
BLACK_AND_WHITE = "black and white"
APART, SHADE = 9.0, 4.0

HEAT = [str(cell_properties("two", "a4", frozenset({trait}))["bg_color"]) for trait in HEAT_TRAITS]


def seen(colour: str, kind: str) -> np.ndarray:
    shares = np.array([int(colour[at : at + 2], 16) for at in (1, 3, 5)]) / 255
    if kind == "everybody":
        return shares
    if kind == BLACK_AND_WHITE:
        lightness, _, hue = cspace_convert(shares, "sRGB1", "JCh")
        return np.clip(cspace_convert([lightness, 0.0, hue], "JCh", "sRGB1"), 0, 1)
    space = {"name": "sRGB1+CVD", "cvd_type": kind, "severity": 100}
    return np.clip(cspace_convert(shares, space, "sRGB1"), 0, 1)


def apart(one: str, other: str, kind: str) -> float:
    return float(deltaE(seen(one, kind), seen(other, kind), input_space="sRGB1"))


def test_measure_finds_red_and_green_alike_where_they_are() -> None:
    red, green = "#B04A3A", "#6E6A1E"
    assert apart(red, green, "deuteranomaly") < 0.5 * apart(red, green, "everybody")


@pytest.mark.parametrize("kind", KINDS)
def test_series_of_a_chart_stay_apart(kind: str) -> None:
    for one, other in combinations(SERIES, 2):
        assert apart(one, other, kind) >= APART, (one, other)


def test_series_that_stand_together_stay_apart_in_black_and_white() -> None:
    assert apart(SERIES[0], SERIES[1], BLACK_AND_WHITE) >= APART
    assert apart(SERIES[0], DUSK, BLACK_AND_WHITE) >= APART  # the marks on a line


@pytest.mark.parametrize("kind", [*KINDS, BLACK_AND_WHITE])
def test_shades_of_a_heat_table_deepen_step_by_step(kind: str) -> None:
    light = [cspace_convert(seen(colour, kind), "sRGB1", "JCh")[0] for colour in (WHITE, *HEAT)]
    assert light == sorted(light, reverse=True)
    assert all(apart(one, deeper, kind) >= SHADE for one, deeper in pairwise(HEAT))


@pytest.mark.parametrize("kind", KINDS)
def test_tabs_of_the_groups_of_sheets_stay_apart(kind: str) -> None:
    report = [colour for group, colour in TABS.items() if group != "log"]  # the groups of one workbook
    for one, other in combinations(report, 2):
        assert apart(one, other, kind) >= APART, (one, other)


def test_no_colour_stands_outside_of_the_style_module() -> None:
    package = Path(reporter.__file__).parent
    found = {
        path.relative_to(package).as_posix()
        for path in package.rglob("*.py")
        if re.search(r"[\"']#[0-9A-Fa-f]{6}[\"']", path.read_text(encoding="utf-8"))
    }
    assert found == {"write/style.py"}
