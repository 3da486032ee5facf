import pytest

from reporter.write.clean import clean, one_line


@pytest.mark.parametrize(
    ("typed", "kept"),
    [
        ("plain", "plain"),
        ("tab\tand\nline", "tab\tand\nline"),
        ("a\x00b\x0bc\x1fd\x7fe\x85f", "abcdef"),
        ("a\ud800b\ufffec\uffffd", "abcd"),
        ("one\r\ntwo\rthree", "one\ntwo\nthree"),
        ("52 °F – ünï 🐟", "52 °F – ünï 🐟"),
        ("=1+1", "=1+1"),
        ("", ""),
    ],
)
def test_what_xml_cannot_hold_is_dropped_and_all_else_stays(typed, kept):
    assert clean(typed) == kept


def test_a_text_of_the_longest_length_stays_whole():
    assert clean("x" * 32_767) == "x" * 32_767


@pytest.mark.parametrize("letter", ["x", "🐟", "\x01x"])
def test_a_longer_text_is_cut_with_a_visible_mark_at_the_length_a_cell_holds(letter):
    cut = clean(letter * 40_000)
    assert cut.endswith("(cut here: a cell holds no more)")
    assert 32_760 <= len(cut.encode("utf-16-le")) // 2 <= 32_767


def test_text_that_looks_like_the_writing_librarys_own_markup_is_told_apart():
    assert clean("<r>x</r>") == "<r>x</r> "


def test_a_title_is_one_line():
    assert one_line(" a\n b\tc\x00 ") == "a b c"
