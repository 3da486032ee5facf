"""Whose a log is, by hand."""

from reporter.compute.rollup.identity import Said, guide_keys


def same(*said: tuple[str, str]) -> list[list[int]]:
    """The logs of each guide, then those of which it is not known; code and name of logs 0, 1, 2 ..."""
    keys = guide_keys([Said(str(log), *each) for log, each in enumerate(said)])
    guides = dict.fromkeys(key for key in keys.values() if key)
    return [[int(log) for log, key in keys.items() if key == guide] for guide in (*guides, "")]


def test_one_code_is_one_guide_whatever_the_name() -> None:
    assert same(("G 1", "Pat"), ("g-1", "Lee"), ("G2", "Pat")) == [[0, 1], [2], []]


def test_without_a_code_one_name_is_one_guide() -> None:
    assert same(("", "Pat Smith"), ("", "pat  SMITH."), ("", "Lee"), ("", "Pat-Smith")) == [
        [0, 1, 3],
        [2],
        [],
    ]


def test_log_without_a_code_under_the_name_of_one_with_a_code_is_that_guides() -> None:
    assert same(("", "Pat"), ("G1", "PAT"), ("G1", ""), ("", "Lee")) == [[0, 1, 2], [3], []]


def test_log_that_may_be_several_guides_is_nobodys() -> None:
    """Two guides of one outfit have codes, a third log of it has none; two say nothing at all."""
    assert same(("G1", "Outfit"), ("G2", "Outfit"), ("", "outfit"), ("", ""), ("-", "?")) == [
        [0],
        [1],
        [2, 3, 4],
    ]
