"""What paid on each water, month by month: technique, cover, depth."""

import pandas as pd

from reporter.compute.conditions.record import StintRecord
from reporter.compute.picker.pick import did_best

OF = ("technique", "cover", "depth")


def water_card(record: StintRecord, water_months: pd.DataFrame, techniques: pd.DataFrame) -> pd.DataFrame:
    """Return one row a water and month in the rates, as in water_months (keyed on water_month).

    For each of OF its label that did best there (see `did_best`), "" where there is too little record.
    """
    stints = record.stints
    place = stints["water"] + "\n" + stints["month"]
    labels = {key: tuple(band.label for band in record.condition(key).bands) for key in ("cover", "depth")}
    labels["technique"] = tuple(techniques["technique"])
    numbers = techniques.set_index("technique")["technique_no"]
    table = pd.DataFrame(
        {
            "rod_hours": stints["rod_hours"],
            "fish": stints["counted_fish"],
            "technique": stints["technique"].map(numbers),
            **{key: record.condition(key).numbers for key in ("cover", "depth")},
        }
    )
    rows = [
        {"water_month": where, **_best(table[place == where], labels)}
        for where in water_months["water_month"]
    ]
    return pd.DataFrame(rows, columns=["water_month", *OF])


def _best(stints: pd.DataFrame, labels: dict[str, tuple[str, ...]]) -> dict[str, str]:
    made = {key: did_best(stints, labels[key], key) for key in OF}
    return {key: next(iter(table.loc[table["place"] == 1, "label"]), "") for key, table in made.items()}
