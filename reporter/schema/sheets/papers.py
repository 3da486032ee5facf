"""Documents, Reports, Fees and Keep rules: what the paperwork pages are made from."""

from reporter.schema.column import Column, Sheet

DOCUMENT_KINDS = ("licence", "permit", "card", "policy")
COUNTING_RULES = (
    "client-days",
    "outings",
    "trips",
    "angler-days",
    "angler-hours",
    "line-hours",
    "log trips",
    "guide-days",
    "average customer hours",
)
PERIODS = ("month", "quarter", "season", "year")
BASES = ("postmarked", "received", "submitted")
ACTIONS = ("LIMIT", "RELEASE", "CLOSED", "KEEPFIRST")
SLOT_ENDS = ("IN", "OUT")
WHO = ("all", "res", "nonres", "youth")
Y_N = ("Y", "N")
MEASURES = ("TL", "FL")

_AS_Y_N = {"yes": "Y", "no": "N", "true": "Y", "false": "N"}
_LENGTHS = (10.0, 3000.0)


def _limit(key: str, heading: str, help_text: str, example: float | None = None) -> Column:
    return Column(key, heading, "count", help_text, possible=(0, 10000), example=example)


def _rule_length(key: str, heading: str, help_text: str) -> Column:
    return Column(key, heading, "number", help_text, quantity="fish length", possible=_LENGTHS)


DOCUMENTS = Sheet(
    "documents",
    "Documents",
    "a licence, permit, card or policy",
    "what runs out when, use against what is allowed",
    columns=(
        Column("document", "Document", "key", "Your name for it.", required=True, example="Guide licence"),
        Column(
            "kind",
            "Kind",
            "choice",
            "licence, permit, card or policy.",
            allowed=DOCUMENT_KINDS,
            same_as={"license": "licence", "insurance": "policy"},
            example="licence",
        ),
        Column("number", "Number", "text", "Its number."),
        Column(
            "holder",
            "Holder",
            "text",
            "Whose it is, as Guide or Boat on Trips name it. Blank: it serves every trip.",
        ),
        Column("valid_from", "Valid from", "date", "First day it is valid.", example="2026-01-01"),
        Column("valid_to", "Valid to", "date", "Last day it is valid.", example="2026-12-31"),
        Column(
            "waters", "Waters", "refs", "Where it counts, with ; between. Blank: everywhere.", refers="waters"
        ),
        Column(
            "counting_rule",
            "Counting rule",
            "choice",
            "How your permit counts use.",
            allowed=COUNTING_RULES,
            same_as={"client days": "client-days", "angler days": "angler-days", "guide days": "guide-days"},
        ),
        _limit(
            "allowed",
            "Allowed",
            "How much use it allows. Of a boat's paper without a Counting rule: most passengers at once.",
        ),
        _limit("returned", "Returned", "Use given back this season."),
        _limit(
            "returned_beyond_control",
            "Returned beyond control",
            "Of it, given back for reasons beyond control.",
        ),
    ),
)

REPORTS = Sheet(
    "reports",
    "Reports",
    "a report that is owed",
    "due dates and nil months",
    columns=(
        Column("report", "Report", "key", "Your name for it.", required=True, example="Monthly log"),
        Column("to", "To", "text", "Who gets it."),
        Column("document", "Document", "ref", "The licence or permit it belongs to.", refers="documents"),
        Column("counting_rule", "Counting rule", "choice", "How it counts.", allowed=COUNTING_RULES),
        Column("period", "Period", "choice", "How often it is owed.", allowed=PERIODS, example="month"),
        Column(
            "nil_months",
            "Nil months",
            "text",
            "always, never, or the months in which a month without trips is owed too: May to Oct.",
            example="never",
        ),
        Column("due_days", "Due days", "count", "Days after the period ends.", possible=(0, 400), example=10),
        Column("basis", "Basis", "choice", "What must happen by then.", allowed=BASES, example="postmarked"),
        Column("last_checked", "Last checked", "date", "When you last read the agency's own text."),
    ),
)

FEES = Sheet(
    "fees",
    "Fees",
    "a fee worksheet",
    "the arithmetic of a use fee",
    columns=(
        Column(
            "document",
            "Document",
            "ref",
            "The permit.",
            required=True,
            refers="documents",
            example="Guide licence",
        ),
        Column("receipts", "Receipts", "number", "Gross receipts.", quantity="money", possible=(0, 1e8)),
        Column(
            "deductions",
            "Deductions",
            "number",
            "What your permit lets you take off.",
            quantity="money",
            possible=(0, 1e8),
        ),
        Column(
            "share_on_land",
            "Share on land",
            "number",
            "Share of the time on that land.",
            quantity="share",
            possible=(0, 1),
        ),
        Column("rate", "Rate", "number", "The rate in per cent.", quantity="share", possible=(0, 1)),
        Column("minimum", "Minimum", "number", "The least that is due.", quantity="money", possible=(0, 1e8)),
        Column("prepaid", "Prepaid", "number", "Paid already.", quantity="money", possible=(0, 1e8)),
    ),
)

KEEP_RULES = Sheet(
    "keep_rules",
    "Keep rules",
    "a regulation, as you typed it",
    "a check of kept fish against the rules you typed",
    columns=(
        Column("rule", "Rule", "key", "Your number for it.", required=True, example="R01"),
        Column(
            "edition", "Edition", "count", "The year of the booklet.", possible=(1990, 2200), example=2026
        ),
        Column("jurisdiction", "Jurisdiction", "text", "State or province as US-MI.", example="US-MI"),
        Column("water", "Water", "text", "* for everywhere, or a water's name.", example="*"),
        Column("species", "Species", "text", "Counted together, with ; between.", example="LMB;SMB"),
        Column("from", "From", "month day", "First day, month first: 05-01.", example="05-01"),
        Column("to", "To", "month day", "Last day; 02-end for the end of February.", example="12-31"),
        Column(
            "action",
            "Action",
            "choice",
            "LIMIT, RELEASE, CLOSED or KEEPFIRST.",
            allowed=ACTIONS,
            example="LIMIT",
        ),
        _rule_length("min_mm", "Min", "Shortest fish that may be kept."),
        _rule_length("max_mm", "Max", "Longest fish that may be kept."),
        _rule_length("slot_from_mm", "Slot from", "Lower end of the slot."),
        _rule_length("slot_to_mm", "Slot to", "Upper end of the slot."),
        Column(
            "slot_ends",
            "Slot ends",
            "choice",
            "IN: both ends are protected. OUT: both are legal.",
            allowed=SLOT_ENDS,
        ),
        _limit("daily_limit", "Daily limit", "Fish an angler a day. Blank says nothing, 0 says none.", 5),
        _rule_length("over_length_mm", "Over length", "Only so many may be longer than this."),
        _limit("over_count", "Over count", "How many may be longer than that."),
        _limit("possession", "Possession", "Possession limit."),
        Column(
            "everywhere",
            "Everywhere",
            "choice",
            "Y: holds even where a water has its own row.",
            allowed=Y_N,
            same_as=_AS_Y_N,
        ),
        Column("who", "Who", "choice", "Whom it binds.", allowed=WHO, example="all"),
        Column("cull_allowed", "Cull allowed", "choice", "Y or N.", allowed=Y_N, same_as=_AS_Y_N),
        Column("guides_fish_count", "Guide's fish count", "choice", "Y or N.", allowed=Y_N, same_as=_AS_Y_N),
        Column(
            "measure", "Measure", "choice", "TL total length, FL fork length.", allowed=MEASURES, example="TL"
        ),
        Column("source", "Source and date read", "text", "Page and day you read it."),
        Column("notes", "Notes", "text", "Private: only you read it."),
    ),
)
