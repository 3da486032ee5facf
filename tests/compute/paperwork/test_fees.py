"""Fee worksheets, use reviews and shares, against the specification's own examples."""

import math

import pytest

from reporter.compute.paperwork.fees import worksheet
from reporter.compute.paperwork.shares import receipts_share_warning, share_inside
from reporter.compute.paperwork.use import next_allocation, reviewed_use
from tests.compute.paperwork.logs import day, read, trips_sheet
from tests.conftest import WriteLog

HEADINGS = ["Document", "Receipts", "Deductions", "Share on land (%)", "Rate (%)", "Minimum", "Prepaid"]


def line(*cells: object) -> dict[str, object]:
    return worksheet("P", *cells)  # type: ignore[arg-type]


# Test F2: gross 12,400.00 - 400.00 = 12,000.00; x 3 % = 360.00; prepaid 300.00 -> due 60.00.
def test_fee_is_a_rate_of_what_is_left_of_the_receipts() -> None:
    made = line(12_400.0, 400.0, None, 0.03, None, 300.0)
    assert (made["adjusted"], made["part"], made["fee"], made["due"]) == (12_000, 1, 360, 60)
    assert made["notes"] == ()


# Test B1: 18,500 - 620 - 380 = 17,500; 24 of 60 h = 40 % -> x 0.60 = 10,500; x 3 % = 315.00; less 110 ->
# 205.00. The rate of 3 % is from memory, the table of cuts from the land manager's page.
def test_share_on_land_cuts_the_base() -> None:
    made = line(18_500.0, 620.0 + 380.0, 24 / 60, 0.03, 110.0, 110.0)
    assert (made["adjusted"], made["base"], made["fee"], made["due"]) == (17_500, 10_500, 315, 205)


# Test B2: the same at 100 % -> 525.00, due 415.00; at 5 % -> 105.00, below the minimum of 110: due 0.00, no
# refund (that the minimum applies so is from memory).
def test_all_of_the_time_cuts_nothing_and_the_minimum_is_the_least() -> None:
    whole = line(18_500.0, 1_000.0, 1.0, 0.03, 110.0, 110.0)
    assert (whole["fee"], whole["due"]) == (525, 415)
    little = line(18_500.0, 1_000.0, 0.05, 0.03, 110.0, 110.0)
    assert (little["fee"], little["charged"], little["due"]) == (105, 110, 0)
    assert little["notes"] == ("The minimum applies.",)
    more = line(18_500.0, 1_000.0, 0.05, 0.03, 110.0, 150.0)
    assert more["due"] == 0
    assert "no refund is worked out" in str(more["notes"])


# The table: under 6 % -> 0.20, 6 to 60 % -> 0.60, 61 to 100 % -> no cut.
@pytest.mark.parametrize(
    ("share", "part"),
    [(0.0, "0.20"), (0.0599, "0.20"), (0.06, "0.60"), (0.6, "0.60"), (0.61, "1"), (0.999, "1"), (1.0, "1")],
)
def test_cut_follows_the_table(share: float, part: str) -> None:
    made = line(100.0, None, share, 0.03, None, None)
    assert str(made["part"]) == part
    assert made["notes"] == ()


# Test B3: 60.4 % lies between the lines of the table: read as 60 %, and said. Halves go up.
@pytest.mark.parametrize(
    ("share", "read", "part"),
    [(0.604, 60, "0.60"), (0.605, 61, "1"), (0.6049, 60, "0.60"), (0.6051, 61, "1")],
)
def test_gap_of_the_table_is_rounded_and_said(share: float, read: int, part: str) -> None:
    made = line(100.0, None, share, 0.03, None, None)
    assert (made["share_read"], str(made["part"])) == (read, part)
    (note,) = made["notes"]  # type: ignore[misc]
    assert note.startswith(f"{share * 100:g} %, read as {read} %")
    assert note.endswith("Ask the land manager.")


def test_money_is_rounded_to_the_cent_with_halves_up() -> None:
    # 1,000.50 x 3 % = 30.015 -> 30.02; and as typed: 0.1 + 0.2 is never 0.30000000000000004.
    assert str(line(1_000.50, None, None, 0.03, None, None)["fee"]) == "30.02"
    assert str(line(0.3, 0.1, None, 1.0, None, None)["fee"]) == "0.20"


def test_fee_is_not_guessed_where_a_number_lacks() -> None:
    made = line(None, 10.0, None, None, 50.0, None)
    assert (made["fee"], made["due"]) == (None, None)
    assert made["notes"] == ("Receipts and Rate not typed on Fees: no fee can be worked out.",)
    less = line(100.0, 200.0, None, 0.03, None, None)
    assert (less["adjusted"], less["due"]) == (0, 0)
    assert "Deductions are more than the receipts" in str(less["notes"])


def test_worksheets_are_made_from_the_sheet_fees(write_log: WriteLog) -> None:
    fees = [HEADINGS, ["Land permit", 18_500, 1_000, 40, 3, 110, 110], ["Land permit", None, None, None, 3]]
    made, _ = read(write_log, {"Trips": trips_sheet([], ("T-001", day(6, 3))), "Fees": fees})
    assert made.fees["row"].tolist() == [2, 3]
    assert made.fees["due"].tolist()[0] == 205.0
    assert made.fees["share_on_land"].tolist()[0] == 40.0
    assert math.isnan(made.fees["due"].tolist()[1])


# Test F3: used 148, returned 30 -> 163.0; 10 of the 30 beyond control -> 168.0; 163 x 1.25 = 203.75, cap 200.
# The law's numbers are second-hand.
def test_returned_days_count_a_half_unless_beyond_control() -> None:
    assert reviewed_use(148, 30, 0) == 163.0
    assert reviewed_use(148, 30, 10) == 168.0
    assert next_allocation(163.0, 200) == 200
    assert next_allocation(120.0, 200) == 150.0


# 148 client-days: 37 trips of 4 clients.
@pytest.mark.parametrize(
    ("returned", "beyond", "reviewed", "following"),
    [
        (30, None, 163.0, 200.0),
        (30, 10, 168.0, 200.0),
        (None, None, math.nan, math.nan),
        (0, 0, math.nan, math.nan),
    ],
)
def test_use_stands_against_what_is_allowed(
    returned: object, beyond: object, reviewed: float, following: float, write_log: WriteLog
) -> None:
    rows = [(f"T-{n:03d}", day(3 + n // 28, 1 + n % 28), 4, "C01; C02; C03; C04") for n in range(37)]
    headings = ["Document", "Kind", "Counting rule", "Allowed", "Returned", "Returned beyond control"]
    made, _ = read(
        write_log,
        {
            "Trips": trips_sheet(["Anglers", "Client"], *rows),
            "Waters": [["Water", "Permit"], ["Lake Arden", "P"]],
            "Documents": [headings, ["P", "permit", "client-days", 200, returned, beyond]],
            "Reports": [["Report", "Document", "Counting rule"], ["Trips", "P", "trips"]],
        },
    )
    of_paper, of_report = made.allowance.to_dict("records")
    assert (of_paper["used"], of_paper["left"]) == (148, 52)
    assert of_paper["words"].startswith("used 148 of 200, 52 left")
    assert of_paper["reviewed"] == pytest.approx(reviewed, nan_ok=True)
    assert of_paper["next_allowed"] == pytest.approx(following, nan_ok=True)
    # What is allowed is counted in client-days: it says nothing of trips.
    assert of_report["words"] == "used 37"
    assert math.isnan(of_report["left"])


def test_use_beyond_what_is_allowed_is_said(write_log: WriteLog) -> None:
    made, _ = read(
        write_log,
        {
            "Trips": trips_sheet(["Client"], ("T-001", day(6, 3), "C01; C02")),
            "Documents": [["Document", "Kind", "Counting rule", "Allowed"], ["P", "licence", "outings", 1]],
        },
    )
    assert made.allowance["words"].tolist() == ["used 2 of 1, 1 more than allowed"]


# Test N2: 8 of 10 miles inside -> 80 %; 3 of 4 hours inside -> 75 % (a form's own examples).
def test_share_inside_is_by_miles_or_hours_and_receipts_below_it_are_said() -> None:
    assert share_inside(8, 10) == 0.80
    assert share_inside(3, 4) == 0.75
    assert receipts_share_warning(7_500, 10_000, 0.75) == ""
    said = receipts_share_warning(7_000, 10_000, 0.75)
    assert said.startswith("70 % of the receipts, but 75 % of the activity is inside")
