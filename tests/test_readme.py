import re

from reporter.cli.main import COMMANDS
from tests.readme import README, filled

TEXT = README.read_text(encoding="utf-8")


def test_lists_and_command_output_are_what_the_schema_and_the_tool_say_now() -> None:
    assert filled(TEXT) == TEXT, "run: python -m tests.readme"


def test_every_command_is_shown_with_its_real_output() -> None:
    shown = set(re.findall(r"^\$ reporter (\w+)", TEXT, re.MULTILINE))
    assert shown == set(COMMANDS)


def test_readme_opens_with_the_job_in_one_paragraph() -> None:
    title, paragraph, *_ = TEXT.split("\n\n")
    assert title.startswith("# ")
    assert not paragraph.startswith(("#", "|", "-", "`"))
    assert "season report" in paragraph.replace("\n", " ")


def test_every_reporter_command_in_running_text_names_a_command_that_exists() -> None:
    named = set(re.findall(r"`reporter (\w+)", TEXT)) | set(re.findall(r"bin/reporter (\w+)", TEXT))
    assert named <= set(COMMANDS)
