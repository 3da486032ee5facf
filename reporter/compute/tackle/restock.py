"""What to have for another season of as many rod-hours, fished in the same shares."""

import numpy as np
import pandas as pd

LOSS_DECIMALS = 6
"""Decimals to which losses are rounded before they are rounded up: two lost are two to have, not three."""


def restock(techniques: pd.DataFrame) -> pd.DataFrame:
    """Return what to have of each technique at this season's rod-hours.

    techniques: as used by technique (see `Used`). Adds expected_losses, the rate of its own losses times its
    rod-hours, and to_have, the same rounded up; NaN where no stint says.
    """
    expected = techniques["lures_lost_per_rod_hour"] * techniques["rod_hours"]
    return techniques.assign(expected_losses=expected, to_have=np.ceil(expected.round(LOSS_DECIMALS)))


def spread(lines: pd.DataFrame, techniques: pd.DataFrame) -> pd.DataFrame:
    """Return sizes or colours with their technique's expected losses, spread by rod-hours.

    lines: as used by size or colour. techniques: as from `restock`. Adds technique_share, a line's share of
    its technique's rod-hours, and expected_losses.
    """
    of_technique = techniques.set_index("technique").loc[lines["technique"]]
    share = lines["rod_hours"].to_numpy() / of_technique["rod_hours"].to_numpy()
    return lines.assign(
        technique_share=share, expected_losses=of_technique["expected_losses"].to_numpy() * share
    )
