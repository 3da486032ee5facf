"""Techniques, Waters and Clients: the names that the other sheets use."""

from reporter.schema.column import Column, Sheet
from reporter.schema.sheets.trips import SAME_AS_YES_NO, YES_NO

STYLES = ("moving", "slow")
SHARE_NAME = ("yes", "masked", "no")
SKILLS = ("new", "some", "handy")

TECHNIQUES = Sheet(
    "techniques",
    "Techniques",
    "a technique",
    "moving against slow; other spellings of a name",
    columns=(
        Column(
            "technique",
            "Technique",
            "key",
            "The name that Effort and Catch use.",
            required=True,
            example="Drop shot",
            audience="client",
            also=("Method", "Name"),
        ),
        Column(
            "style",
            "Style",
            "choice",
            "moving covers water; slow waits the fish out.",
            required=True,
            allowed=STYLES,
            same_as={"reaction": "moving", "power": "moving", "finesse": "slow"},
            example="slow",
            audience="client",
        ),
        Column("also_called", "Also called", "names", "Other spellings, with ; between.", example="DS"),
        Column("rigging", "Rigging", "text", "How it is usually rigged.", audience="client"),
        Column("tackle_list", "Tackle list", "text", "What a client would need to buy.", audience="client"),
    ),
)

WATERS = Sheet(
    "waters",
    "Waters",
    "a water",
    "other spellings, permits, what a client may read of it",
    columns=(
        Column(
            "water",
            "Water",
            "key",
            "The name that Trips uses.",
            required=True,
            example="Lake Arden",
            also=("Lake", "Name"),
        ),
        Column("also_called", "Also called", "names", "Other spellings, with ; between.", example="Arden"),
        Column("region", "Region", "text", "State or province as US-MI, CA-BC.", example="US-MI"),
        Column("county", "County", "text", "County or district."),
        Column("agency_code", "Agency code", "text", "The agency's number, with its leading zeros."),
        Column("land_manager", "Land manager", "text", "Who manages the land."),
        Column("permit", "Permit", "ref", "The permit that trips here count on.", refers="documents"),
        Column(
            "share_name",
            "Share name",
            "choice",
            "What a client's copy may call it: its name, the masked name, or nothing.",
            allowed=SHARE_NAME,
            same_as={"y": "yes", "n": "no", "mask": "masked"},
            example="yes",
        ),
        Column(
            "masked_name",
            "Masked name",
            "text",
            "What to call it instead, as: a northern reservoir.",
            audience="client",
        ),
    ),
)

CLIENTS = Sheet(
    "clients",
    "Clients",
    "a client",
    "client copies",
    columns=(
        Column(
            "client",
            "Client",
            "key",
            "Your code for the client.",
            required=True,
            example="C01",
            also=("Code",),
        ),
        Column(
            "name_on_summary",
            "Name on summary",
            "text",
            "The name as the client wants to read it.",
            audience="client",
        ),
        Column(
            "consent_to_name",
            "Consent to name",
            "choice",
            "yes if the name may be printed.",
            allowed=YES_NO,
            same_as=SAME_AS_YES_NO,
            example="yes",
        ),
        Column(
            "youth",
            "Youth",
            "choice",
            "yes for a child.",
            allowed=YES_NO,
            same_as=SAME_AS_YES_NO,
            example="no",
        ),
        Column(
            "skill",
            "Skill",
            "choice",
            "How used to it the client is.",
            allowed=SKILLS,
            same_as={"beginner": "new", "experienced": "handy"},
            example="some",
        ),
        Column(
            "licence_number",
            "Licence number",
            "text",
            "Only where an agency asks for it.",
            also=("License number",),
        ),
        Column("licence_from", "Licence from", "date", "First day it is valid.", also=("License from",)),
        Column("licence_to", "Licence to", "date", "Last day it is valid.", also=("License to",)),
    ),
)
