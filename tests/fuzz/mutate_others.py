"""Mutations of logs in the other formats: .ods by bytes, parts and cells, .xls by bytes and numbers, .csv."""

import csv
import io
import random
import re
import struct
from xml.sax.saxutils import escape

from tests.fuzz.mutate import NUMBERS, TEXTS, mutate_bytes, repacked
from tests.fuzz.sources import Files

_CELL = re.compile(rb"<table:table-cell\b[^>]*?(?:/>|>.*?</table:table-cell>)")
_ROW = re.compile(rb"<table:table-row\b")
_REPEATS = (b"0", b"-1", b"2", b"1000", b"16384", b"1048576", b"4000000000", b"x", b"")
_MOMENTS = (b"2026-04-18", b"2026-13-45", b"0000-00-00", b"9999-12-31T23:59:59", b"1899-12-30", b"x", b"")
_SPANS = (b"PT06H30M00S", b"PT26H30M00S", b"-PT1H", b"PT", b"P1Y", b"PT99999999999H00M00S", b"x")
_WORDS = (0, 1, 0xFF, 0x100, 0x7FFF, 0x8000, 0xFFFF)
_CODES = ("utf-8", "utf-8-sig", "utf-16", "utf-16-be", "cp1252", "utf-32")


def mutate_ods(rng: random.Random, source: bytes) -> bytes:
    """Return a mutated .ods file."""
    if rng.random() < 0.25:
        return mutate_bytes(rng, source)
    share = rng.choice((0.01, 0.05, 0.3))
    broken = rng.random() < 0.25

    def change(name: str, data: bytes) -> bytes | None:
        if name != "content.xml":
            return None if broken and rng.random() < 0.1 else data
        data = _CELL.sub(lambda found: _cell(rng) if rng.random() < share else found[0], data)
        data = _ROW.sub(
            lambda found: found[0] + (_repeat(rng, b"rows") if rng.random() < share / 50 else b""), data
        )
        return _broken(rng, data) if broken else data

    return repacked(source, change)


def _broken(rng: random.Random, data: bytes) -> bytes:
    at = rng.randrange(len(data))
    return (
        data[:at]
        + rng.choice((b"", b"<", b"</table:table>", b"&x;", rng.randbytes(3)))
        + data[at + rng.randrange(9) :]
    )


def _repeat(rng: random.Random, what: bytes) -> bytes:
    return b' table:number-%b-repeated="%b"' % (what, rng.choice(_REPEATS))


def _cell(rng: random.Random) -> bytes:
    kind, name, values = rng.choice(
        (
            (b"float", b"value", NUMBERS),
            (b"percentage", b"value", NUMBERS),
            (b"currency", b"value", NUMBERS),
            (b"boolean", b"boolean-value", (b"true", b"false", b"x")),
            (b"date", b"date-value", _MOMENTS),
            (b"time", b"time-value", _SPANS),
            (b"string", b"string-value", (b"x",)),
            (b"odd", b"value", NUMBERS),
        )
    )
    said = b"" if kind == b"string" else b' office:%b="%b"' % (name, rng.choice(values))
    formula, spanned = b' table:formula="of:=1/0"', b' table:number-rows-spanned="3"'
    more = rng.choice((*[b""] * 17, _repeat(rng, b"columns"), formula, spanned))
    text = escape(rng.choice(TEXTS).replace("\x00", "")).encode()
    inside = rng.choice((b"<text:p>%b</text:p>" % text, b"<text:p>a</text:p><text:p>%b</text:p>" % text, b""))
    return b'<table:table-cell office:value-type="%b"%b%b>%b</table:table-cell>' % (kind, said, more, inside)


def mutate_xls(rng: random.Random, source: bytes) -> bytes:
    """Return a mutated .xls file: bytes changed anywhere, or the two-byte numbers that rule its records."""
    if rng.random() < 0.4:
        return mutate_bytes(rng, source)
    data = bytearray(source)
    for _ in range(rng.choice((1, 2, 8, 32))):
        struct.pack_into("<H", data, rng.randrange(256, len(data) // 2) * 2 - 2, rng.choice(_WORDS))
    return bytes(data)


def mutate_csv(rng: random.Random, source: Files) -> Files:
    """Return a mutated folder: cells, signs and codes of its files, their bytes, files that are not there."""
    files = dict(source)
    code = rng.choice(_CODES) if rng.random() < 0.3 else "utf-8"
    for name in list(files):
        deed = rng.random()
        if deed < 0.02:
            del files[name]
        elif deed < 0.05:
            files[name] = mutate_bytes(rng, files[name])
        elif deed < 0.8:
            files[name] = _respelled(rng, files[name], code)
    files.setdefault("Trips.csv", source["Trips.csv"])
    return files


def _respelled(rng: random.Random, data: bytes, code: str) -> bytes:
    share = rng.choice((0, 0.01, 0.05, 0.3))
    rows = [
        [_text(rng) if rng.random() < share else cell for cell in row]
        for row in csv.reader(io.StringIO(data.decode()))
    ]
    text = io.StringIO()
    sign, quoted = rng.choice(",,;\t"), rng.random() < 0.95
    if quoted:
        csv.writer(text, delimiter=sign, lineterminator=rng.choice(("\r\n", "\n", "\r"))).writerows(rows)
    else:
        text.write("\n".join(sign.join(row) for row in rows))
    return text.getvalue().encode(code, errors="replace")


def _text(rng: random.Random) -> str:
    if rng.random() < 0.002:
        return "\0"
    return rng.choice((rng.choice(TEXTS), rng.choice(NUMBERS).decode(), '"', ",;\t", "a\nb", "\u00a0"))
