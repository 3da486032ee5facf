"""Mutations of an .xlsx workbook: of its bytes, of its XML parts, of its cells."""

import io
import random
import re
import zipfile
from collections.abc import Callable
from xml.sax.saxutils import escape

_CELL = re.compile(rb'<c r="([A-Z]+\d+)"[^>]*?(?:/>|>.*?</c>)')
NUMBERS = (
    b"0",
    b"-1",
    b"1e308",
    b"NaN",
    b"",
    b"9" * 400,
    b"2958466",
    b"-0.5",
    b"1E-320",
    b"0.5",
    b"46000",
    b"60",
)
TEXTS = (
    *(
        "",
        " ",
        "\u200b",
        "4-8",
        "4.12",
        "1,5",
        "1.5",
        "=1+1",
        "#REF!",
        "13/04/2026",
        "04/13/2026",
        "30 Feb 2026",
    ),
    *(
        "９９",
        "18¼”",
        "½",
        "x" * 32_767,
        "\ud7ff",
        "_x0000_",
        "7.30p",
        "25:99",
        "none",
        "n/a",
        "-",
        "TOTAL",
        "void",
    ),
    *(
        "T-001",
        "T-001;T-002",
        "1/0",
        "1e400",
        "\u202e",
        "٣",
        "'",
        '"',
        "NW",
        "9" * 5000,
        "Trip",
        "12:00:00.5",
    ),
)
_TAGS = (
    b"<v>",
    b"</v>",
    b"<row ",
    b"</row>",
    b"<c ",
    b't="s"',
    b't="e"',
    b't="b"',
    b't="d"',
    b's="3"',
    b'r="',
)


def mutate(rng: random.Random, source: bytes) -> bytes:
    """Return a mutated workbook; one of three ways."""
    way = rng.choice((mutate_bytes, _parts, _cells, _cells))
    return way(rng, source)


def mutate_bytes(rng: random.Random, source: bytes) -> bytes:
    """Return the same file with some of its bytes changed, and now and then cut short."""
    data = bytearray(source)
    for _ in range(rng.choice((1, 1, 2, 8, 64))):
        data[rng.randrange(len(data))] = rng.randrange(256)
    if rng.random() < 0.2:
        del data[rng.randrange(len(data)) :]
    return bytes(data)


def _parts(rng: random.Random, source: bytes) -> bytes:
    def change(name: str, data: bytes) -> bytes | None:
        if not data or rng.random() > 0.08:
            return data
        deed = rng.randrange(5)
        if deed == 0:
            return None
        at = rng.randrange(len(data))
        if deed == 1:
            return data[:at] + rng.choice(_TAGS) + data[at:]
        if deed == 2:
            return data[:at] + data[min(len(data), at + rng.randrange(1, 200)) :]
        if deed == 3:
            old = rng.choice(_TAGS)
            return data.replace(old, rng.choice(_TAGS), rng.choice((1, -1)))
        return data[:at] + rng.randbytes(rng.randrange(1, 9)) + data[at:]

    return repacked(source, change)


def _cells(rng: random.Random, source: bytes) -> bytes:
    share = rng.choice((0.01, 0.05, 0.3))

    def change(name: str, data: bytes) -> bytes | None:
        if "worksheets/sheet" not in name:
            return data
        return _CELL.sub(lambda cell: _cell(rng, cell[1]) if rng.random() < share else cell[0], data)

    return repacked(source, change)


def _cell(rng: random.Random, at: bytes) -> bytes:
    """Return another cell for an address: a number, a text, a truth value, an error, a formula, or none."""
    number, text = rng.choice(NUMBERS), escape(rng.choice(TEXTS)).encode()
    return rng.choice(
        (
            b'<c r="%b"><v>%b</v></c>' % (at, number),
            b'<c r="%b" s="%d"><v>%b</v></c>' % (at, rng.randrange(4), number),
            b'<c r="%b" t="inlineStr"><is><t>%b</t></is></c>' % (at, text),
            b'<c r="%b" t="inlineStr"><is><t>%b</t></is></c>' % (at, text),
            b'<c r="%b" t="str"><f>A1</f><v>%b</v></c>' % (at, text),
            b'<c r="%b" t="b"><v>%d</v></c>' % (at, rng.randrange(3)),
            b'<c r="%b" t="e"><v>#DIV/0!</v></c>' % at,
            b'<c r="%b"><f>1/0</f></c>' % at,
            b'<c r="%b"/>' % at,
            b"",
        )
    )


def repacked(source: bytes, change: Callable[[str, bytes], bytes | None]) -> bytes:
    """Return an archive with its parts changed, or left out where the change is None."""
    made = io.BytesIO()
    with zipfile.ZipFile(io.BytesIO(source)) as old, zipfile.ZipFile(made, "w", zipfile.ZIP_DEFLATED) as new:
        for name in old.namelist():
            data = change(name, old.read(name))
            if data is not None:
                new.writestr(name, data)
    return made.getvalue()
