"""Cut and garbled files are read or refused in a sentence: nothing else is ever raised."""

import gzip
from pathlib import Path

import pytest
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st

from reporter.read.errors import Unreadable
from reporter.read.weather.door import open_weather
from reporter.tidy.weather.tidy import tidy_weather
from tests.tidy.weather.examples import EXAMPLES

SETTINGS = settings(
    derandomize=True,
    deadline=None,
    max_examples=150,
    suppress_health_check=[HealthCheck.function_scoped_fixture],
)
TEXTS = st.sampled_from([example.text for example in EXAMPLES.values()])
ZONES = st.sampled_from(["America/New_York", "", "no zone", None])


def read_or_refused(path: Path, content: bytes, zone: str | None = None) -> None:
    path.write_bytes(content)
    try:
        raw = open_weather(path)
    except Unreadable:
        return
    count = len(raw.lines)
    assert all(len(texts) == count for texts in raw.columns.values())
    made = tidy_weather(raw, zone, (None, None))
    stations, problems = made.stations, made.problems
    assert stations or problems
    for station in stations:
        assert station.table["hour"].is_unique
    for problem in problems:
        assert not {"{", "}"} & set(problem.message.replace(problem.value, ""))


@SETTINGS
@given(text=TEXTS, share=st.floats(0, 1), zone=ZONES)
def test_file_cut_anywhere(text: str, share: float, zone: str | None, tmp_path: Path) -> None:
    content = text.encode()
    read_or_refused(tmp_path / "weather.csv", content[: int(share * len(content))], zone)


@SETTINGS
@given(text=TEXTS, places=st.lists(st.floats(0, 1), max_size=8), put=st.binary(max_size=6))
def test_file_with_bytes_overwritten(text: str, places: list[float], put: bytes, tmp_path: Path) -> None:
    content = bytearray(text.encode())
    for place in places:
        at = int(place * len(content))
        content[at : at + len(put)] = put
    read_or_refused(tmp_path / "weather.csv", bytes(content), "America/New_York")


@SETTINGS
@given(
    text=TEXTS,
    put=st.text(alphabet='0123456789-+.,:"|\t eEMT/∞²٣', max_size=12),
    line=st.integers(0, 5),
    cell=st.integers(0, 30),
)
def test_cell_with_anything_typed_in(text: str, put: str, line: int, cell: int, tmp_path: Path) -> None:
    lines = text.splitlines()
    number = max(len(lines) - 1 - line, 0)
    delimiter = next((sign for sign in "|\t," if sign in lines[number]), " ")
    cells = lines[number].split(delimiter)
    cells[cell % len(cells)] = put
    lines[number] = delimiter.join(cells)
    read_or_refused(tmp_path / "weather.csv", "\n".join(lines).encode(), "America/New_York")


@SETTINGS
@given(share=st.floats(0, 1))
def test_packed_file_cut_anywhere(share: float, tmp_path: Path) -> None:
    packed = gzip.compress(EXAMPLES["ASOS"].text.encode())
    read_or_refused(tmp_path / "weather.csv.gz", packed[: int(share * len(packed))])


@pytest.mark.parametrize("repeat", [1, 400])
def test_nothing_but_one_letter(repeat: int, tmp_path: Path) -> None:
    for letter in ('"', ",", "#", "\n", "|", "\t", "\ufeff"):
        read_or_refused(tmp_path / "weather.csv", (letter * repeat).encode())
