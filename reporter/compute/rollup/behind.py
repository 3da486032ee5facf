"""How many guides stand behind cells taken together, with no more kept of a cell than two of its guides.

So that what is kept does not grow with the number of logs, a cell has the number of its guides and two of
them, the first and the last. With fewer than three guides these are all of them, so that of cells taken
together it is known who they are; with three or more there are guides enough whoever they are. A log of
which it is not known whose it is adds no guide: it may be any one's.
"""

import numpy as np
import pandas as pd


def guides_behind(cells: pd.DataFrame, groups: np.ndarray) -> np.ndarray:
    """Return the guides behind each group of cells: their number up to two; from three on, three at least.

    cells: guides, one, other (numbers of guides, NaN for none). groups: of each cell its group, from
    0, none left out.
    """
    known = pd.DataFrame({"group": np.tile(groups, 2), "guide": np.r_[cells["one"], cells["other"]]})
    different = known.groupby("group")["guide"].nunique().to_numpy()
    most = cells["guides"].groupby(groups).max().to_numpy()
    fewest: np.ndarray = np.maximum(different, most)
    return fewest
