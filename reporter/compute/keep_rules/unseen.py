"""What typed rules say that no log can show: listed, so that nobody takes it for checked."""

import pandas as pd

from reporter.compute.keep_rules.read import ReadKeepRules
from reporter.schema.log import BY_KEY

_SHEET = BY_KEY["keep_rules"]


def unseen(read: ReadKeepRules) -> pd.DataFrame:
    """Return rule, heading (of Keep rules), value (as read), why; in the order of rules within each."""
    rows = [
        *(
            (r.name, "who", r.who, "The log does not say whom it binds.")
            for r in read.rules
            if not r.binds_all
        ),
        *((r.name, "measure", "FL", "The log holds total length.") for r in read.rules if r.fork_length),
        *((rule, "cull_allowed", cull, "The log does not show culling.") for rule, cull in read.culls),
        *(
            (r.name, "possession", f"{r.possession:g}", "Checked on days in a row only.")
            for r in read.rules
            if r.possession == r.possession
        ),
        *((rule, "notes", note, "Notes are not read.") for rule, note in read.noted),
    ]
    table = pd.DataFrame(rows, columns=["rule", "heading", "value", "why"])
    return table.assign(heading=[_SHEET.column(key).heading for key in table["heading"]])
