"""Numbers in plain words."""

import pytest

from reporter.books.words import rod_hours_words


@pytest.mark.parametrize(
    ("hours", "said"),
    [
        (1.0, "1 rod-hour"),
        (0.25, "0.2 rod-hours"),
        (4.5, "4.5 rod-hours"),
        (4.0, "4 rod-hours"),
        (16.5, "16.5 rod-hours"),
        (99.96, "100 rod-hours"),
        (697.4166, "697 rod-hours"),
        (1204.0, "1,204 rod-hours"),
    ],
)
def test_rod_hours_have_a_tenth_while_it_is_of_weight(hours: float, said: str) -> None:
    assert rod_hours_words(hours) == said
