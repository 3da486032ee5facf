"""The cases C01 to C33: one angler, one day, inches; what must come of each was worked out by hand."""

from dataclasses import dataclass

import pytest

from reporter.schema.keep_tables import CANNOT_CHECK, CHECK_THIS, NO_PROBLEM, NOT_CHECKED
from tests.compute.keep_rules.logs import PARTY, Fish, Trip, check, results, the_twelve
from tests.conftest import WriteLog

FORK, ARDEN, HERON = "Pike Fork", "Lake Arden", "Big Heron Lake"
BRANNOCK, OTTER, SABLE = "Brannock Reservoir", "Otter River", "Sable Creek"
LMB, SMB, SPB = "largemouth bass", "smallmouth bass", "spotted bass"
WAE, SAR, MUE, BNT, RBT = "walleye", "sauger", "muskellunge", "brown trout", "rainbow trout"
BLC, WHC, CCF = "black crappie", "white crappie", "channel catfish"
ALL_BASS = f"{LMB}; {SMB}; {SPB}"


@dataclass(frozen=True)
class Case:
    """Fish of a day on a water, and every row that must come of it: species, result, rules."""

    name: str
    water: str
    day: str
    fish: tuple[Fish, ...]
    found: tuple[tuple[str, str, str], ...]
    edition: int = 2026


def fails(name: str, water: str, day: str, rules: str, species: str, *fish: Fish) -> Case:
    return Case(name, water, day, fish, ((species, CHECK_THIS, rules),))


def passes(name: str, water: str, day: str, held: dict[str, str], *fish: Fish, edition: int = 2026) -> Case:
    """held: species -> the rules that hold for it."""
    found = tuple((species, NO_PROBLEM, rules) for species, rules in sorted(held.items()))
    return Case(name, water, day, fish, found, edition)


def released(species: str, length: float) -> Fish:
    return Fish(species, length, fate="released")


THREE_AND_TWO = (Fish(LMB, 14.0, 3), Fish(SMB, 15, 2))
JUNE = "2026-06-06"

CASES = (
    passes("C01", FORK, JUNE, {LMB: "R01; R02", SMB: "R01; R02"}, *THREE_AND_TWO),
    fails("C02", FORK, JUNE, "R01", ALL_BASS, *THREE_AND_TWO, Fish(SPB, 11)),
    fails("C03", FORK, JUNE, "R02", LMB, Fish(LMB, "13 7/8")),
    passes("C04", FORK, JUNE, {SPB: "R01"}, Fish(SPB, 11)),
    passes("C05", ARDEN, JUNE, {LMB: "R01; R03"}, Fish(LMB, 13.75, 4), Fish(LMB, 18.25)),
    fails("C06", ARDEN, JUNE, "R03", LMB, Fish(LMB, 14.0)),
    fails("C07", ARDEN, JUNE, "R03", LMB, Fish(LMB, 18.0)),
    fails("C09", ARDEN, "2026-04-30", "R04", LMB, Fish(LMB, 13)),
    passes("C10", ARDEN, "2026-05-01", {LMB: "R01; R03"}, Fish(LMB, 13)),
    passes("C12", FORK, "2026-01-15", {WAE: "R05; R06", SAR: "R05"}, Fish(WAE, 16), Fish(SAR, 12, 2)),
    fails("C13", FORK, "2026-03-02", "R05; R06", WAE, released(WAE, 22)),
    passes("C15", FORK, "2026-07-04", {WAE: "R05; R06"}, Fish(WAE, 20.0), Fish(WAE, 21)),
    fails("C16", FORK, "2026-07-04", "R06", WAE, Fish(WAE, 20.25), Fish(WAE, 21)),
    passes("C17", HERON, "2026-07-04", {WAE: "R05; R07"}, Fish(WAE, 12, 3), Fish(WAE, 26.5)),
    fails("C18", HERON, "2026-07-04", "R07", WAE, Fish(WAE, 26.0)),
    passes("C20", BRANNOCK, "2026-12-20", {BLC: "R09", WHC: "R09"}, Fish(BLC, 8, 20), Fish(WHC, 9, 5)),
    passes("C22", BRANNOCK, "2028-02-29", {BLC: "R09"}, Fish(BLC, 8), edition=2028),
    fails("C24", OTTER, "2026-06-04", "R11", RBT, Fish(RBT, 12)),
    passes("C26", OTTER, "2026-11-15", {BNT: "R11"}, released(BNT, 19)),
    fails("C27", SABLE, "2026-11-15", "R10", BNT, released(BNT, 19)),
    passes("C28", FORK, "2026-06-01", {MUE: "R12"}, Fish(MUE, 40.0)),
    fails("C29", FORK, "2026-05-31", "R12", MUE, released(MUE, 44)),
    Case("C30", FORK, "2026-07-04", (Fish(CCF, 20),), ((CCF, NOT_CHECKED, ""),)),
    Case("C31", ARDEN, JUNE, (Fish(LMB),), ((LMB, CANNOT_CHECK, "R03"),)),
)


@pytest.mark.parametrize("case", CASES, ids=lambda case: case.name)
def test_case_comes_out_as_worked_out_by_hand(case: Case, write_log: WriteLog) -> None:
    checks = check(write_log, [Trip(case.water, case.day, case.fish)], the_twelve(case.edition))
    assert results(checks) == list(case.found)


def party(*fish: Fish) -> Trip:
    return Trip(FORK, JUNE, fish, anglers=3, clients=PARTY, guide_fished="yes")


def test_c32_sixteen_bass_of_three_clients_and_a_guide_are_one_more_than_three_times_five(
    write_log: WriteLog,
) -> None:
    checks = check(write_log, [party(Fish(LMB, 15, 8), Fish(SMB, 15, 8))])
    assert results(checks) == [(f"{LMB}; {SMB}", CHECK_THIS, "R01")]
    assert checks.table["message"].tolist() == [
        "Check this: Pike Fork, 6 Jun, 16 LMB and SMB were entered as kept; your rule R01 allows 5 an angler"
        " a day, 3 x 5 here (party total; cannot check each angler)."
    ]


def test_c33_fifteen_are_within_the_party_total_and_nobody_knows_who_kept_how_many(
    write_log: WriteLog,
) -> None:
    checks = check(write_log, [party(Fish(LMB, 15, 8), Fish(SMB, 15, 7))])
    assert results(checks) == [(f"{LMB}; {SMB}", CANNOT_CHECK, "R01")]
    assert checks.table["message"].tolist() == [
        "Cannot check: Pike Fork, 6 Jun, 15 LMB and SMB were entered as kept, within 3 x 5 of R01: party"
        " total; cannot check each angler."
    ]


def test_message_has_the_words_of_the_rule_and_accuses_nobody(write_log: WriteLog) -> None:
    checks = check(write_log, [Trip(ARDEN, JUNE, [Fish(LMB, 14.0)])])
    assert checks.table["message"].tolist() == [
        "Check this: Lake Arden, 6 Jun, LMB 14.0 in was entered as kept; your rule R03 protects 14-18 in."
    ]
    said = " ".join(checks.table["message"]).casefold()
    assert not {"legal", "illegal", "violation", "broke", "fine", "compliant"} & set(said.split())


def test_date_outside_the_edition_is_not_checked_and_says_both_years(write_log: WriteLog) -> None:
    checks = check(write_log, [Trip(FORK, "2025-06-06", [Fish(LMB, 10, 9)])])
    assert results(checks) == [(LMB, NOT_CHECKED, "R01; R02")]
    assert "these are 2026 rules, trip is 2025" in checks.table["message"][0]
