import pytest

from reporter.tidy.near import looks_like, of_initials
from tests.tidy.shared import Find


@pytest.mark.parametrize(
    ("name", "other"),
    [
        ("dropshoot", "Drop shot"),
        ("Dorp shot", "Drop shot"),
        ("Jerkbaits", "Jerkbait"),
        ("Lk Arden", "Lake Arden"),
        ("Brannock Res.", "Brannock Reservoir"),
        ("Ada Bergh", "Ada Berg"),
        ("Marie Lund", "Maria Lund"),
    ],
)
def test_slip_or_a_word_cut_short_looks_like_the_name(name: str, other: str) -> None:
    assert looks_like(name, other)
    assert looks_like(other, name)


@pytest.mark.parametrize(
    ("name", "other"),
    [
        ("Drop shot", "drop-shot"),  # one name already
        ("Lake Arden North", "Lake Arden South"),
        ("Upper Weir", "Lower Weir"),
        ("Crankbait 5", "Crankbait 10"),
        ("Client 101", "Client 102"),
        ("C01", "C10"),
        ("Ned rig", "Neko rig"),
        ("Swim jig", "Swing jig"),
        ("Jig", "Jigging"),
        ("Dana", "Dina"),
        ("Ada B", "Ada C"),
        ("Tube", "Tubes"),
    ],
)
def test_names_that_may_well_be_two_do_not_look_alike(name: str, other: str) -> None:
    assert not looks_like(name, other)
    assert not looks_like(other, name)


@pytest.mark.parametrize(("typed", "name"), [("DS", "Drop shot"), ("nr", None), ("j", None), ("D", None)])
def test_initials_offer_the_one_name_that_has_them(typed: str, name: str | None) -> None:
    assert of_initials(typed, ["Drop shot", "Ned rig", "Neko rig", "Jerkbait"]) == name


def test_spellings_of_a_name_that_no_sheet_lists_are_noted_once_each(found: Find) -> None:
    changes = {"Techniques": None, "Effort": {"B5": "Jerkbaits"}, "Catch": {"B4": "Jerkbaits"}}
    assert found(changes) == [("Effort", 5, "names_alike")]


def test_names_beyond_any_list_are_not_compared(found: Find) -> None:
    """A name a row is a free text: comparing each with all would find likenesses by chance."""
    names = [["Trip", "Technique", "Minutes", "Anglers on it", "Landed"]]
    names += [["T-001", f"lure of {chr(97 + i % 26)}{chr(97 + i // 26)}", 1, 1, 0] for i in range(450)]
    names += [["T-002", "Drop shot", 240, 2, 1], ["T-002", "Drop shoot", 1, 1, 0]]
    names += [["T-003", "Jerkbait", 240, 2, 2]]
    changes = {"Techniques": None, "Effort": names, "Catch": {"B2": "lure of aa"}}
    assert ("Effort", 453, "names_alike") not in found(changes)
