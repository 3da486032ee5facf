from itertools import combinations
from typing import get_args

import pytest

from reporter.books.blocks import Look
from reporter.write.style import (
    CHART_TEXT,
    CHART_TITLE,
    INK,
    ROLES,
    SERIES,
    STRAW,
    WHITE,
    Trait,
    cell_properties,
    leans_left,
    number_format,
)


def luminance(colour):
    """WCAG 2, relative luminance."""
    shares = [int(colour[at : at + 2], 16) / 255 for at in (1, 3, 5)]
    red, green, blue = (s / 12.92 if s <= 0.03928 else ((s + 0.055) / 1.055) ** 2.4 for s in shares)
    return 0.2126 * red + 0.7152 * green + 0.0722 * blue


def contrast(one, other):
    """WCAG 2, contrast ratio."""
    light, dark = sorted((luminance(one), luminance(other)), reverse=True)
    return (light + 0.05) / (dark + 0.05)


def test_the_measure_of_contrast_gives_the_known_ends():
    assert contrast("#000000", "#FFFFFF") == pytest.approx(21)
    assert contrast("#777777", "#FFFFFF") == pytest.approx(4.48, abs=0.01)


@pytest.mark.parametrize("role", ROLES)
def test_text_in_every_role_stands_out_from_its_ground(role):
    properties = ROLES[role]
    assert contrast(properties["font_color"], properties.get("bg_color", WHITE)) >= 4.5


@pytest.mark.parametrize("count", [0, 1, 2, 3])
def test_cells_with_any_traits_stand_out_from_their_ground(count):
    for traits in combinations(get_args(Trait), count):
        properties = cell_properties("text", "a4", frozenset(traits))
        assert contrast(properties["font_color"], properties.get("bg_color", WHITE)) >= 4.5, traits


def test_text_of_charts_and_notes_stands_out():
    assert contrast(CHART_TEXT["color"], WHITE) >= 4.5
    assert contrast(CHART_TITLE["color"], WHITE) >= 4.5
    assert contrast("#000000", STRAW) >= 4.5  # a note's text is always black


@pytest.mark.parametrize("colour", SERIES)
def test_series_can_be_seen_on_white_and_error_bars_on_series(colour):
    assert contrast(colour, WHITE) >= 3


def test_error_bars_can_be_seen_on_the_bars_of_a_chart_of_one_series():
    assert contrast(INK, SERIES[0]) >= 3


def test_a_grey_row_differs_by_more_than_its_colour():
    plain, grey = (cell_properties("whole", "a4", frozenset(t)) for t in ((), ("grey",)))
    assert grey["font_color"] != plain["font_color"]
    assert grey["italic"] is True
    assert "italic" not in plain


def test_a_required_heading_differs_by_more_than_its_colour():
    assert ROLES["required"]["bold"] is True
    assert "bold" not in ROLES["optional"]


def test_days_and_clock_times_are_written_as_the_papers_country_writes_them():
    assert number_format("date", "a4") == "ddd d mmm yyyy"
    assert number_format("date", "letter") == "ddd mmm d, yyyy"
    assert number_format("time", "a4") == "hh:mm"
    assert number_format("time", "letter") == "h:mm AM/PM"


def test_text_stands_left_and_numbers_right():
    left = {look for look in get_args(Look) if cell_properties(look, "a4")["align"] == "left"}
    assert left == {"text", "wrapped", "typed"} == {look for look in get_args(Look) if leans_left(look)}
