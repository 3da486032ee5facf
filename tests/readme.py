"""Fills the generated parts of the README: lists from the schema, output from the tool itself.

Run `python -m tests.readme` after a change to either; a test compares.
"""

import re
import shlex
import shutil
from collections.abc import Callable
from contextlib import chdir
from pathlib import Path
from tempfile import TemporaryDirectory

from click.testing import CliRunner

from reporter.cli.main import cli
from reporter.compute.paperwork.paperwork import paperwork
from reporter.run.season import read_season
from reporter.schema.asked_columns import FIELDS, AskedField
from reporter.schema.column import Column, Sheet, Unless
from reporter.schema.log import SHEETS
from reporter.schema.problems import EFFECTS, FINDINGS
from reporter.schema.sheets.season import SETTINGS
from reporter.schema.summary_table import SUMMARY
from reporter.schema.units import USUAL
from reporter.schema.weather_files.form import WeatherFormat
from reporter.schema.weather_files.formats import FORMATS
from tests.compute.paperwork.keystone import ANSWERS, keystone_sheets
from tests.conftest import book_of

ROOT = Path(__file__).parent.parent
README = ROOT / "README.md"
_SHOWN_LINES = 28


def columns_list() -> str:
    return "\n".join(_sheet(sheet) for sheet in SHEETS)


def _sheet(sheet: Sheet) -> str:
    columns = SETTINGS if sheet.key == "season" else sheet.columns
    needed = " (needed)" if sheet.required else ""
    kind = "setting" if sheet.key == "season" else "column"
    rows = [f"| {_heading(column)} | {_required(column, sheet)} | {_what(column)} |" for column in columns]
    return "\n".join(
        [
            f"<details><summary><b>{sheet.name}</b>{needed}: one row is {sheet.one_row_is}. "
            f"Feeds: {sheet.feeds}.</summary>",
            "",
            f"| {kind} | needed | what to type |",
            "|---|---|---|",
            *rows,
            "",
            "</details>",
            "",
        ]
    )


def _heading(column: Column) -> str:
    if column.quantity is None:
        return column.heading
    units = list(dict.fromkeys(USUAL[column.quantity].values()))
    return f"{column.heading} ({' or '.join(units)})" if units != [""] else column.heading


def _required(column: Column, sheet: Sheet) -> str:
    if isinstance(column.required, Unless):
        setting = next(setting for setting in SETTINGS if setting.key == column.required.setting)
        return f"or {setting.heading}"
    if column.required:
        return "yes"
    return "one of these" if any(column.key in group for group in sheet.one_of) else ""


def _what(column: Column) -> str:
    allowed = f" One of: {', '.join(column.allowed)}." if column.allowed else ""
    return f"{column.help}{allowed}".replace("|", "\\|")


def problems_list() -> str:
    lines = []
    for effect in EFFECTS:
        lines += [f"**{effect}**", "", "| code | what it is | what to do |", "|---|---|---|"]
        for finding in FINDINGS:
            if finding.effect == effect:
                remedy = re.sub(r"\{\w+\}", "...", finding.remedy)
                said = "As the message says." if remedy == "..." else remedy
                lines.append(f"| `{finding.code}` | {finding.title} | {said} |")
        lines.append("")
    return "\n".join(lines)


def console(command: str) -> str:
    """Run the `reporter` command of a console block among the samples and return the block."""
    program, *arguments = shlex.split(command)
    assert program == "reporter", command
    with TemporaryDirectory() as folder, chdir(folder):
        for sample in (ROOT / "sample_workbooks").iterdir():
            (shutil.copytree if sample.is_dir() else shutil.copy)(sample, Path(folder) / sample.name)
        result = CliRunner().invoke(cli, arguments, prog_name="reporter")
    assert result.exit_code == 0, result.output
    lines = result.output.rstrip("\n").split("\n")
    shown = (
        lines
        if len(lines) <= _SHOWN_LINES
        else [*lines[: _SHOWN_LINES // 2], "...", *lines[-_SHOWN_LINES // 2 :]]
    )
    return "\n".join(["```console", f"$ {command}", *shown, "```"])


def weather_list() -> str:
    rows = [f"| {known.name} | {_signs(known)} | {_zone(known)} |" for known in FORMATS]
    return "\n".join(["| kind of file | known by | its times |", "|---|---|---|", *rows, ""])


def _signs(known: WeatherFormat) -> str:
    if known.recognised:
        return ", ".join(f"`{group[0]}`" for group in known.recognised)
    return "lines of numbers without headings" if known.implied else "lines such as `KXYZ 011253Z ...`"


def _zone(known: WeatherFormat) -> str:
    words = {
        "UTC": "UTC, unless the heading says another zone",
        "in the text": "as each says",
        "standard time": "local standard time, by Time zone on Season",
        "wall clock": "local, by Time zone on Season",
    }
    return "; else ".join(dict.fromkeys(words[rule.zone] for rule in known.times))


def counting_list() -> str:
    """Count one trip by five rules, as `reporter filing` does."""
    rows = ["| counted by | comes to | what counts |", "|---|---|---|"]
    with TemporaryDirectory() as folder:
        for rule in ANSWERS:
            log = Path(folder) / f"{rule}.xlsx"
            book_of(keystone_sheets(rule), {}).save(log)
            reading = read_season(log)
            assert reading.season is not None
            (use,) = paperwork(reading.season, reading.log).uses
            rows.append(f"| {rule} | {use.count.count:g} | {use.count.words} |")
    return "\n".join([*rows, ""])


def asked_list() -> str:
    rows = [f"| `{asked.key}` | {asked.what}{_asked_of(asked)} |" for asked in FIELDS]
    return "\n".join(["| field | what it holds |", "|---|---|", *rows, ""])


def _asked_of(asked: AskedField) -> str:
    return " Where rows are species." if asked.of_species else ""


def summary_list() -> str:
    rows = [f"| `{field.name}` | {field.description} |" for field in SUMMARY.fields]
    return "\n".join(["| column | what it holds |", "|---|---|", *rows, ""])


_LISTS: dict[str, Callable[[], str]] = {
    "asked": asked_list,
    "columns": columns_list,
    "counting": counting_list,
    "problems": problems_list,
    "summary": summary_list,
    "weather": weather_list,
}


def filled(text: str) -> str:
    """Return the README's text with its generated parts made anew."""

    def listed(match: re.Match[str]) -> str:
        return f"<!-- list: {match[1]} -->\n{_LISTS[match[1]]()}<!-- end -->"

    def run(match: re.Match[str]) -> str:
        command = re.search(r"^\$ (.*)$", match[2], re.MULTILINE)
        assert command is not None, match[0]
        return f"<!-- run: {match[1]} -->\n{console(command[1])}\n<!-- end -->"

    text = re.sub(r"<!-- list: (\w+) -->\n(.*?)<!-- end -->", listed, text, flags=re.DOTALL)
    return re.sub(r"<!-- run: (\w+) -->\n(.*?)\n<!-- end -->", run, text, flags=re.DOTALL)


if __name__ == "__main__":
    README.write_text(filled(README.read_text(encoding="utf-8")), encoding="utf-8")
