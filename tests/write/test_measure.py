"""Text broken into lines that fit: by the writing library's own widths of letters."""

import pytest
from xlsxwriter.utility import xl_pixel_width

from reporter.write.measure import broken

SENTENCE = "Too close to call between those with a chance of 5 % or more: Topwater, Drop shot, Jerkbait."


@pytest.mark.parametrize("room", [120, 250, 400])
def test_lines_hold_the_whole_text_and_fit(room: int) -> None:
    lines = broken(SENTENCE, room)
    assert " ".join(lines) == SENTENCE
    assert len(lines) > 1
    assert all(xl_pixel_width(line) < room for line in lines)


def test_text_that_fits_is_one_line() -> None:
    assert broken(SENTENCE, 1_000) == [SENTENCE]


def test_word_wider_than_the_room_is_broken_inside() -> None:
    lines = broken("x" * 200, 100)
    assert "".join(lines) == "x" * 200
    assert all(0 < xl_pixel_width(line) < 100 for line in lines)
