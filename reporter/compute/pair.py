"""Catch and effort of two techniques, by trip or added up by stratum.

Arrays are shaped (..., trips). A trip on which a technique was not fished has effort 0, and its catch is
ignored.
"""

from typing import NamedTuple

import numpy as np
from numpy.typing import ArrayLike, NDArray

from reporter.compute.ratio import FloatArray


class Pair(NamedTuple):
    """Catch (fish) and effort (rod-hours) of two techniques, of one shape: (..., trips) or (..., strata)."""

    catch_this: FloatArray
    effort_this: FloatArray
    catch_against: FloatArray
    effort_against: FloatArray

    @property
    def effort(self) -> FloatArray:
        """Rod-hours of the two together."""
        return self.effort_this + self.effort_against

    @property
    def both(self) -> NDArray[np.bool_]:
        """Where both techniques were fished."""
        return (self.effort_this > 0) & (self.effort_against > 0)

    @property
    def weighted(self) -> tuple[FloatArray, FloatArray]:
        """Each technique's fish times the other's share of the effort; 0 where only one was fished."""
        return (
            shared_part(self.catch_this * self.effort_against, self.effort),
            shared_part(self.catch_against * self.effort_this, self.effort),
        )

    def summed(self, members: FloatArray) -> "Pair":
        """Add up (..., trips) to (..., strata), by members (..., strata, trips)."""
        return Pair(
            catch_this=summed_by(members, self.catch_this),
            effort_this=summed_by(members, self.effort_this),
            catch_against=summed_by(members, self.catch_against),
            effort_against=summed_by(members, self.effort_against),
        )

    def spread_out(self, members: FloatArray) -> "Pair":
        """Give each trip the figures of its stratum, (..., strata) to (..., trips)."""
        return self.summed(members.swapaxes(-1, -2))


def pair_of(
    catch_this: ArrayLike, effort_this: ArrayLike, catch_against: ArrayLike, effort_against: ArrayLike
) -> Pair:
    """Two techniques as floats of one shape, catch and effort both 0 where effort is not above 0.

    Raises ValueError where the shapes do not go together.
    """
    given = (catch_this, effort_this, catch_against, effort_against)
    c1, e1, c0, e0 = np.broadcast_arrays(*(np.asarray(part, dtype=np.float64) for part in given))
    fished_this, fished_against = e1 > 0, e0 > 0
    return Pair(
        catch_this=np.where(fished_this, c1, 0.0),
        effort_this=np.where(fished_this, e1, 0.0),
        catch_against=np.where(fished_against, c0, 0.0),
        effort_against=np.where(fished_against, e0, 0.0),
    )


def members_of(strata: ArrayLike) -> FloatArray:
    """Return 1.0 where a trip lies in a stratum, (..., strata, trips), from the integers of (..., trips).

    Strata stand in ascending order; negative integers are no stratum.
    """
    of_trip = np.asarray(strata, dtype=np.int64)
    labels = np.unique(of_trip[of_trip >= 0])
    return np.asarray(of_trip[..., None, :] == labels[:, None], dtype=np.float64)


def shared_part(part: FloatArray, whole: FloatArray) -> FloatArray:
    """Return part / whole, 0 where the whole is not above 0."""
    with np.errstate(all="ignore"):
        return np.where(whole > 0, part / whole, 0.0)


def summed_by(members: FloatArray, values: FloatArray) -> FloatArray:
    """Add up values (..., trips) to (..., strata)."""
    return np.asarray(np.einsum("...st,...t->...s", members, values), dtype=np.float64)
