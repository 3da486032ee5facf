"""The table of fish against the rules that the guide typed, and the words of its results."""

from reporter.schema.csv_table import CsvField, CsvTable

CHECK_THIS = "check this"
CANNOT_CHECK = "cannot check"
NOT_CHECKED = "not checked"
NO_PROBLEM = "no problem found against the rules you typed"

RESULTS = (CHECK_THIS, CANNOT_CHECK, NOT_CHECKED, NO_PROBLEM)
"""What a check may say, and nothing else: it knows what was typed, not what the law is."""

KEEP_CHECKS = CsvTable(
    "keep_checks",
    "a guided trip's fish of a kind on a day, or one rule that they were held against",
    (
        CsvField("trip", "string", "The trip's number as typed."),
        CsvField("date", "date", "The day of the catch, as far as the log says."),
        CsvField("water", "string", "Water."),
        CsvField("species", "string", "Common names, with ; between; empty where no fish is meant."),
        CsvField("result", "string", f"One of: {', '.join(RESULTS)}."),
        CsvField("rule", "string", "Names of your rules, with ; between; empty where none is meant."),
        CsvField("message", "string", "The result in a sentence."),
    ),
)
