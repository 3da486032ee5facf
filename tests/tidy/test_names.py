"""Names: spelled freely, merged only as told, never by guess. What bare bass means. Trip numbers."""

import pytest

from reporter.schema.log import folded_code
from tests.tidy.finding_cases import stint, trip
from tests.tidy.shared import Find, Read, Tidy, rates, triples, with_season

US = {"Units": "us", "Last day": "2026-11-30", "Time zone": "America/Chicago"}


@pytest.mark.parametrize(
    "typed", ["drop shot", "DROP SHOT", "Drop-shot", "dropshot", " Drop  shot ", "drop_shot!", "DS", "d.s."]
)
def test_case_spaces_hyphens_punctuation_and_also_called_are_one_technique(typed: str, read: Read) -> None:
    reading = read({"Effort": {"B2": typed}, "Catch": {"B3": typed}})
    assert reading.problems == []
    assert reading.season is not None
    assert set(reading.season.stints["technique"]) == {"Drop shot", "Jerkbait"}
    assert rates(reading) == (6, 24.0)


@pytest.mark.parametrize("typed", ["Drop shots", "dropshoot", "D S 2", "Drop shot rig"])
def test_near_spelling_is_offered_and_never_merged(typed: str, read: Read) -> None:
    reading = read({"Effort": {"B2": typed, "B4": typed}, "Catch": {"B2": typed, "B3": typed}})
    (problem,) = reading.problems
    assert (problem.sheet, problem.row, problem.code) == ("Effort", 2, "name_unknown")
    assert reading.season is not None
    assert set(reading.season.stints["technique"]) == {typed, "Jerkbait"}


def test_nearest_listed_name_is_offered(read: Read) -> None:
    (problem,) = read({"Trips": {"C4": "Lake Ardan"}}).problems
    assert "'Lake Arden'" in problem.text


def test_unknown_name_is_noted_once_and_joined_under_its_first_spelling(read: Read) -> None:
    reading = read({"Effort": {"B3": "Hair jig", "B5": "hair-jig"}, "Catch": {"B4": "HAIR JIG"}})
    assert [(p.sheet, p.row, p.code) for p in reading.problems] == [("Effort", 3, "name_unknown")]
    assert reading.season is not None
    techniques = reading.season.techniques.set_index("technique")["style"].to_dict()
    assert techniques == {"Drop shot": "slow", "Jerkbait": "moving", "Hair jig": ""}


def test_names_are_free_where_their_sheet_is_not_there(found: Find) -> None:
    assert (
        found({"Techniques": None, "Waters": None, "Effort": {"B5": "Tube"}, "Catch": {"B4": "tube"}}) == []
    )


def test_other_name_of_two_things_is_merged_with_neither(read: Read) -> None:
    reading = read({"Techniques": {"C3": "DS; stickbait"}, "Effort": {"B2": "DS"}, "Catch": {"B2": "DS"}})
    assert [(p.sheet, p.row, p.code) for p in reading.problems] == [
        ("Effort", 2, "name_unknown"),
        ("Techniques", 3, "name_shared"),
    ]
    assert reading.season is not None
    assert set(reading.season.stints["technique"]) == {"DS", "Drop shot", "Jerkbait"}


def test_name_of_its_own_row_is_stronger_than_another_rows_also_called(found: Find, read: Read) -> None:
    changes = {"Techniques": {"C3": "Drop shot"}}
    assert found(changes) == [("Techniques", 3, "name_shared")]
    assert rates(read(changes)) == (6, 24.0)


def test_clients_are_never_merged_by_guess(read: Read) -> None:
    clients = [["Client", "Name on summary"], ["C01", "A. Guest"], ["C10", "A. Guest"]]
    changes = {
        "Clients": clients,
        "Trips": {"G1": "Client", "G2": "C01; c-10", "G3": "C011", "G4": "A. Guest"},
    }
    reading = read(changes)
    assert triples(reading) == [
        ("Clients", 3, "clients_alike"),
        ("Trips", 3, "name_unknown"),
        ("Trips", 4, "name_unknown"),
    ]
    assert reading.season is not None
    assert reading.season.trips["clients"].tolist() == [("C01", "C10"), ("C011",), ("A. Guest",)]


def test_guide_is_an_angler_without_a_row_on_clients(found: Find) -> None:
    changes = {
        "Clients": [["Client"], ["C01"]],
        "Catch": {"F1": "Angler", "F2": "guide", "F3": "C01", "F4": "Guide"},
    }
    assert found(changes) == []


@pytest.mark.parametrize(
    ("settings", "typed", "code"),
    [
        ({}, "bass", None),
        ({"Bass means": "largemouth"}, "bass", "LMB"),
        ({"Bass means": "spotted bass"}, "Bass", "SPB"),
        ({"Bass means": "black bass"}, "bass", "BLB"),
        ({"Species counted": "black bass"}, "bass", "BLB"),
        ({"Species counted": "largemouth; smallmouth"}, "bass", "BLB"),
        ({"Species counted": "largemouth, walleye"}, "bass", None),
        ({"Species counted": "white bass"}, "bass", None),
        ({"Species counted": "walleye", "Bass means": "smallmouth"}, "bass", "SMB"),
        ({}, "black bass", "BLB"),
        ({}, "Large-mouth", "LMB"),
        ({}, "smallies", "SMB"),
        ({}, "LMB", "LMB"),
        ({}, "walleyes", "WAE"),
        ({"Species counted": "black bass"}, "trout", None),
        ({"Species counted": "black bass"}, "white bass", "WHB"),
    ],
)
def test_bare_bass_is_what_season_says_or_what_the_counted_species_leave_no_doubt_of(
    settings: dict[str, object], typed: str, code: str | None, tidied: Tidy
) -> None:
    log = tidied({"Season": with_season({**US, **settings}), "Catch": {"C4": typed}})
    assert triples(log) == ([] if code else [("Catch", 4, "species_two_meanings")])
    fish = log.tables["catch"]
    assert fish.loc[fish["used"] & (fish["row"] == 4), "species"].tolist() == ([code] if code else [])


@pytest.mark.parametrize("typed", ["none", "None", "no fish", "blanked", "0", 0])
def test_row_that_says_there_was_no_fish_is_used_and_is_none(typed: object, read: Read) -> None:
    reading = read({"Effort": {"E5": None}, "Catch": {"C4": typed, "D4": None, "E4": None}})
    assert reading.problems == []
    assert rates(reading) == (4, 24.0)


def test_unknown_fish_is_offered_the_nearest(read: Read) -> None:
    (problem,) = read({"Catch": {"C4": "smalmouth bass"}}).problems
    assert "smallmouth bass?" in problem.text


@pytest.mark.parametrize("other", [3, "003", "3"])
def test_trip_numbers_that_look_alike_stay_two_trips(other: object, read: Read) -> None:
    reading = read({"Trips": trip(other), "Effort": stint(other, "Jerkbait", 240, 2, 0)})
    assert [(p.row, p.code) for p in reading.problems] == [(5, "trip_alike")]
    assert rates(reading) == (6, 32.0)


def test_trip_numbers_of_two_boats_do_not_look_alike(found: Find) -> None:
    changes = {"Trips": {"A2": "A-1", "A3": "A-2", "A4": "B-1"}}
    links = {
        "Effort": {"A2": "A-1", "A3": None, "A4": "A-2", "A5": "B-1"},
        "Catch": {"A2": "A-1", "A3": "A-2"},
    }
    links["Catch"]["A4"] = "B-1"
    assert found({**changes, **links}) == []


@pytest.mark.parametrize(
    ("numbers", "said"),
    [
        (["001", "002", "004"], "003 is missing between 001 and 004"),
        (["T-1", "T-2", "T-3", "T-6"], "T-4, T-5 are missing between T-1 and T-6"),
        (["T-009", "T-010", "T-012"], "T-011 is missing between T-009 and T-012"),
        (["1a", "2a", "4a"], "3a is missing between 1a and 4a"),
        (["3", "1", "4"], "2 is missing between 1 and 4"),
    ],
)
def test_missing_trip_numbers_are_named_in_one_note(numbers: list[str], said: str, tidied: Tidy) -> None:
    trips = [["Trip", "Date", "Water", "Start", "End", "Anglers"]]
    for day, number in enumerate(numbers, start=1):
        trips.append([number, f"2026-05-0{day}", "Lake Arden", "6:00", "10:00", 2])
    effort = [["Trip", "Technique", "Parts"], [numbers[0], "Jerkbait", 1]]
    fish = [["Trip", "Species"], [numbers[0], "LMB"]]
    problems = tidied({"Trips": trips, "Effort": effort, "Catch": fish}).problems
    texts = [problem.text for problem in problems if problem.code == "trips_skipped"]
    assert len(texts) == 1
    assert texts[0].startswith(said)


def test_numbers_that_are_no_run_are_not_missed(found: Find) -> None:
    numbers = {"A2": "20260418", "A3": "20260704", "A4": "20260912"}
    effort = {"A2": "20260418", "A3": "20260418", "A4": "20260704", "A5": "20260912"}
    assert found({"Trips": numbers, "Effort": effort, "Catch": numbers}) == []


def test_other_name_of_a_row_whose_own_name_waits_for_a_result_is_kept(tidied: Tidy) -> None:
    log = tidied({"Waters": {"A2": "=1+1"}, "Trips": {"C2": "Arden"}})
    assert ("Waters", 2, "not_calculated") in triples(log)
    assert log.tables["trips"]["water"].tolist() == ["Arden", "Lake Arden", "Bell River"]


CODES = [
    ["Client", "Name on summary"],
    ["1", "Ann Archer"],
    ["2", "Bo"],
    ["12", "Cy"],
    ["C01", "Cy"],
    ["C-02", None],
]


@pytest.mark.parametrize(
    ("typed", "clients"),
    [
        ("1; 2", ("1", "2")),
        ("1, 2", ("1", "2")),
        ("1 2", ("1", "2")),
        ("1/2", ("1", "2")),
        ("1 and 2", ("1", "2")),
        ("C01\nC02", ("C01", "C-02")),
        ("c-01 & c02", ("C01", "C-02")),
        ("Ann Archer and Bo", ("1", "2")),
        ("ann archer; bo", ("1", "2")),
        ("12", ("12",)),
        ("C 02", ("C-02",)),
        ("1.2", ("1.2",)),
        ("1, 3", ("1, 3",)),
        # A name that two clients share is nobody's code.
        ("Cy", ("Cy",)),
    ],
)
def test_clients_are_read_by_code_or_name_and_never_run_together(
    typed: str, clients: tuple[str, ...], read: Read
) -> None:
    reading = read({"Trips": {"G1": "Client", "G2": typed}, "Clients": CODES})
    assert reading.season is not None
    assert reading.season.trips["clients"][0] == clients


@pytest.mark.parametrize(
    ("one", "other", "alike"),
    [
        ("C-01", "c 01", True),
        ("C01", "C.01", False),
        ("1, 2", "12", False),
        ("1 2", "12", False),
        ("1 2", "1-2", True),
        ("1/2", "12", False),
    ],
)
def test_codes_differ_by_any_sign_but_case_and_what_stands_beside_a_letter(
    one: str, other: str, alike: bool
) -> None:
    assert (folded_code(one) == folded_code(other)) is alike
