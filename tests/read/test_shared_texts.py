"""The list of texts of a workbook, read the quick way and, by `both_ways`, the other."""

from collections.abc import Callable
from pathlib import Path

import pytest
import xlsxwriter

from reporter.read.raw import RawSheet

MAIN = "http://schemas.openxmlformats.org/spreadsheetml/2006/main"
Way = Callable[..., dict[str, str]]
Read = Callable[..., RawSheet]

LISTS = {
    "spaces without a word for them": ("<si><t> x </t></si>", " x "),
    "spaces": ('<si><t xml:space="preserve"> x </t></si>', " x "),
    "entities": ("<si><t>a &lt; b &#38; &#x20AC;</t></si>", "a < b & €"),
    "runs": ("<si><r><rPr><b/></rPr><t>two</t></r><r><t xml:space='preserve'> runs</t></r></si>", "two runs"),
    "readings": ("<si><t>課</t><rPh sb='0' eb='1'><t>カ</t></rPh><phoneticPr fontId='1'/></si>", "課"),
    "line ends": ("<si><t>a\r\nb</t></si>", "a\nb"),
    "escapes": ("<si><t>a_x000D_b</t></si>", "a\rb"),
    "sections": ("<si><t><![CDATA[a<b]]></t></si>", "a<b"),
    "lines between": ("\n<si><t>a</t></si>\n", "a"),
}


@pytest.mark.parametrize(("items", "text"), LISTS.values(), ids=LISTS)
def test_list_of_texts_is_read_the_quick_way_with_whatever_texts_hold(
    items: str, text: str, tmp_path: Path, patched: Callable[..., Path], way_of: Way, sheet_of: Read
) -> None:
    path = _with_texts(tmp_path, patched, f'<sst xmlns="{MAIN}">{items}</sst>')
    assert way_of(path) == {"Log": "quick"}
    assert sheet_of(path).rows == [(text,)]


@pytest.mark.parametrize(
    "texts",
    [
        f'<x:sst xmlns:x="{MAIN}"><x:si><x:t>a</x:t></x:si></x:sst>',
        f'<sst xmlns="{MAIN}"><si></si ><si><t>b</t></si></sst>',
        f'<sst xmlns="{MAIN}"><si phonetic="1"><t>a</t></si></sst>',
        f'<sst xmlns="{MAIN}" xmlns:x="urn:x"><si><x:t>a</x:t></si></sst>',
        f'<sst xmlns="{MAIN}"><si><t>a</t><t>b</t></si></sst>',
        f'<sst xmlns="{MAIN}"><!-- <si><t>a</t></si> --><si><t>b</t></si></sst>',
        f'<sst xmlns="{MAIN}"><si><t xmlns="urn:x">a</t></si></sst>',
        f"<sst xmlns='{MAIN}'><si><t>a</t></si></sst>",
    ],
)
def test_list_of_texts_laid_out_otherwise_is_read_the_other_way(
    texts: str, tmp_path: Path, patched: Callable[..., Path], way_of: Way
) -> None:
    assert way_of(_with_texts(tmp_path, patched, texts)) == {"Log": "full"}


def _with_texts(folder: Path, patched: Callable[..., Path], texts: str) -> Path:
    """A workbook of one cell, which is the first of these texts."""
    book = xlsxwriter.Workbook(folder / "plain.xlsx")
    book.add_worksheet("Log").write_string(0, 0, "x")
    book.close()
    return patched(folder / "plain.xlsx", {"xl/sharedStrings.xml": texts.encode()})
