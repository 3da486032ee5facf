"""What can be chosen on What worked, and the order in which choices are let go."""

from typing import NamedTuple

ANY = "Any"


class Choice(NamedTuple):
    """A choice: key, words on the page, and what is let go of it when too little fits."""

    key: str
    words: str


CHOICES: tuple[Choice, ...] = (
    Choice("time_of_year", "Time of year"),
    Choice("water_temperature", "Water temperature"),
    Choice("day_type", "Type of day"),
    Choice("clarity", "Clarity"),
    Choice("water", "Water"),
    Choice("sky", "Sky"),
    Choice("wind_speed", "Wind"),
)
"""In the order of the page, which is that of how long they are held on to."""

TEMPERATURE = "water_temperature"

STEPS: tuple[tuple[str, bool], ...] = (
    ("time_of_year", True),
    (TEMPERATURE, False),
    (TEMPERATURE, True),
    *((choice.key, True) for choice in CHOICES[2:]),
)
"""Steps of fit, first to last: key of the choice, and whether it must fit exactly. Too little record lets go
of the last step first: wind, sky, water, clarity, type of day, the exact band of temperature (those beside
it still fit), temperature, time of year. What moves fish most, by common practice, no source, goes last."""
