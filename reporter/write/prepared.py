"""A worksheet that takes formulas as they are."""

from xlsxwriter.worksheet import Worksheet


class PreparedWorksheet(Worksheet):  # type: ignore[misc]  # the library has no types
    """A worksheet for formulas that have been through `reporter.write.functions.portable`.

    xlsxwriter looks in every formula for some thirty functions that a file writes with a prefix, which takes
    longer than all else about it; `portable` has seen to these, and to what no program shares.
    """

    def _prepare_formula(self, formula: str, expand_future_functions: bool = False) -> str:
        return formula.removeprefix("=")
