"""The tables of a roll-up that leave as files: the columns that the schema names, in its order."""

import pandas as pd

from reporter.compute.rollup.rollup import Rollup
from reporter.schema.rollup_tables import GUIDE_TABLES, ROLLUP_TABLES


def rollup_outputs(made: Rollup) -> dict[str, pd.DataFrame]:
    """Return table name -> table."""
    fish = {"unknown": "fate_unknown"}
    tables = {
        "rollup_effort": made.effort,
        "rollup_fish": made.fish.rename(columns=fish),
        "guide_effort": made.guide_effort,
        "guide_fish": made.guide_fish.rename(columns=fish),
        "missing_months": made.missing,
        "logs": made.logs,
        "problems_by_log": made.problems,
    }
    specs = (*ROLLUP_TABLES, *GUIDE_TABLES)
    return {spec.name: tables[spec.name][[field.name for field in spec.fields]] for spec in specs}
