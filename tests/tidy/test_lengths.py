"""Lengths beyond their species, as a guide slips: centimetres, millimetres and feet."""

import pytest

from reporter.schema.longest import LONGEST_MM
from reporter.schema.species import BY_CODE
from tests.tidy.shared import Read


@pytest.mark.parametrize(
    ("heading", "species", "typed", "remedy"),
    [
        ("Length (in)", "black crappie", 46, "Did you mean cm?"),
        ("Length (in)", "largemouth bass", "46 in", "Did you mean cm?"),
        ("Length (in)", "bluegill", 60, "Mend the length."),
        ("Length (cm)", "smallmouth bass", 460 / 4, "Did you mean mm?"),
        ("Length (in)", "northern pike", 1.5, "If that is feet, type 18."),
        ("Length (in)", "largemouth bass", "1.6", "If that is feet, type 19.2."),
    ],
)
def test_slip_takes_the_length_and_asks(
    read: Read, heading: str, species: str, typed: object, remedy: str
) -> None:
    reading = read({"Catch": {"D1": heading, "C2": species, "D2": typed, "D3": None, "D4": None}})
    (problem,) = [problem for problem in reading.problems if problem.row == 2]
    assert problem.code == "length_impossible"
    assert species in problem.text
    assert problem.text.endswith(remedy)
    assert reading.season is not None
    assert reading.season.fish["length_mm"].isna().all()


@pytest.mark.parametrize(
    ("heading", "species", "typed"),
    [
        ("Length (in)", "northern pike", 46),
        ("Length (in)", "largemouth bass", 28.5),
        ("Length (in)", "largemouth bass", 3.5),
        ("Length (in)", "bluegill", 2),
        ("Length (cm)", "largemouth bass", 5),
        ("Length (in)", "gar", 70),
    ],
)
def test_fish_that_can_be_are_taken_at_their_word(
    read: Read, heading: str, species: str, typed: object
) -> None:
    reading = read({"Catch": {"D1": heading, "C2": species, "D2": typed, "D3": None, "D4": None}})
    assert [problem for problem in reading.problems if problem.code == "length_impossible"] == []


def test_every_species_has_a_longest_length_but_gars() -> None:
    assert set(BY_CODE) - set(LONGEST_MM) == {"GAR"}


@pytest.mark.parametrize(
    ("heading", "units", "typed", "system"),
    [
        ("Length (in)", "metric", 16, "us"),
        ("Length (in)", "us", "46 cm", "metric"),
        ("Length (in)", "us", "460 mm", "metric"),
        ("Length (cm)", "us", 46, "metric"),
        ("Length (mm)", "us", "460", "metric"),
        ("Length (cm)", "metric", "18 1/4 in", "us"),
        ("Length (cm)", "metric", '18.25"', "us"),
        ("Length (cm)", "metric", "1'6\"", "us"),
        ("Length (cm)", "metric", "1 ft", "us"),
        ("Length (cm)", "metric", "41,5", "metric"),
        ("Length", "us", 18, "us"),
        ("Length", "metric", 46, "metric"),
        ("Length", "metric", "18 in", "us"),
        ("Length (in)", "us", None, ""),
        ("Length (in)", "us", "big", ""),  # not read
        ("Length (in)", "us", 90, ""),  # longer than any
    ],
)
def test_length_was_measured_in_the_unit_of_its_cell_else_of_its_heading_else_of_season(
    heading: str, units: str, typed: object, system: str, read: Read
) -> None:
    reading = read(
        {"Catch": {"D1": heading, "D2": typed, "D3": None, "D4": None}, "Season": {"B2": units}},
    )
    assert reading.season is not None
    assert reading.season.fish["length_system"].tolist() == [system, "", ""]
