"""Ways to break a workbook, one for each thing that a rule looks at."""

from typing import NamedTuple

from tests.programs.books import ONE
from tests.programs.package import TYPES


class Break(NamedTuple):
    """What becomes of the first match in a part of a kind of workbook, and what is said of it then.

    A small workbook shows it as well as a large one, in a tenth of the time.
    """

    part: str
    pattern: str
    into: str
    said: str
    kind: str = ONE


SHEET, BOOK, STYLES, CHART = (
    "xl/worksheets/sheet3.xml",
    "xl/workbook.xml",
    "xl/styles.xml",
    "xl/charts/chart1.xml",
)
NOTES, DRAWING, CORE = "xl/comments1.xml", "xl/drawings/drawing1.xml", "docProps/core.xml"
_IN_ANY_REPORT = [
    (SHEET, r"</worksheet>", "", "no element found"),
    ("xl/drawings/vmlDrawing1.vml", r"</xml>", "", "no element found"),
    (SHEET, r"(standalone=\S+\?>)", r"\1<!DOCTYPE worksheet>", "has a document type"),
    ("xl/worksheets/_rels/sheet3.xml.rels", "vmlDrawing(?=[0-9])", "noDrawing", "which is not there"),
    ("xl/worksheets/_rels/sheet3.xml.rels", "rId2", "rId1", "the id rId1 twice"),
    (SHEET, r'r:id="rId1"', r'r:id="rId77"', "rId77 is no relationship"),
    ("_rels/.rels", r'<Relationship [^>]*custom.xml"/>', "", "custom.xml: nothing leads to it"),
    (CORE, r"(<dc:title>.*?</dc:title>)", r"\1\1", "title twice"),
    ("docProps/custom.xml", r"(<property .*</property>)", r"\1\1", "custom property pid 2 twice"),
    (BOOK, r'name="Contents"', 'name="AT A GLANCE"', "two sheets at a glance"),
    (BOOK, r'sheetId="2"', 'sheetId="1"', "two sheets of the id 1"),
    (BOOK, r'name="Contents"', f'name="{"C" * 32}"', "no name for a sheet"),
    (BOOK, r'name="Contents"', 'name="Con/tents"', "no name for a sheet"),
    (BOOK, r'name="Contents"', 'name="History"', "keep for themselves"),
    (BOOK, r'(<definedName name="pair_landed">.*?</definedName>)', r"\1\1", "two names"),
    (BOOK, r'definedName name="pair_landed"', 'definedName name="pair landed"', "no name for cells"),
    (BOOK, r'definedName name="pair_landed"', 'definedName name="pl12"', "no name for cells"),
    (BOOK, r"'Trip techniques'!", "'Nowhere'!", "on ['Nowhere'], which is not there"),
    (BOOK, r"'Trip techniques'!", "Trip techniques!", "no cells"),
    (BOOK, r"('Trip techniques'!)[^<]*", r"\1#REF!", "no cells"),
    (BOOK, r"('Trip techniques'!\$A\$6:[$A-Z]+)[0-9]+", r"\g<1>20", "a filter of"),
    (STYLES, r'(<cellXfs.*?fontId=")\d+', r"\g<1>999", "no fontId 999"),
    (STYLES, r'<numFmt numFmtId="164"[^>]*>', "", "no number format 164"),
    (STYLES, r'formatCode="[^"]*"', f'formatCode="{"0" * 256}"', "a number format too long"),
    (SHEET, r'(<row r="1" .*?</row>)(<row r="2" .*?</row>)', r"\2\1", "row 1 after row 2"),
    (SHEET, r' ht="[^"]*"', ' ht="410"', "is 410 tall"),
    (SHEET, r'(<c r="A1".*?</c>)', r"\1\1", "A1: out of order"),
    (SHEET, r'r="A1"', 'r="A0"', "A0: out of order"),
    (SHEET, r'r="A1" s="\d+"', 'r="A1" s="9999"', "no format 9999"),
    (SHEET, r't="s"><v>\d+', 't="s"><v>99999', "no shared text 99999"),
    (SHEET, r't="s"><v>\d+', 't="inlineStr"><v>1', "of the kind inlineStr"),
    (SHEET, r't="s"><v>\d+', 't="e"><v>#N/A', "of the kind e"),
    (SHEET, r"<f>[^<]*</f><v>", "<v>nan", "no number: nan"),
    (SHEET, r"<f>[^<]*</f>", "<f></f>", "a formula too long, or none"),
    (SHEET, r"<f>[^<]*</f>", f"<f>{'1+' * 4096}1</f>", "a formula too long, or none"),
    ("xl/sharedStrings.xml", r"<t>[^<]*</t>", f"<t>{'x' * 32_768}</t>", "32768 characters"),
    (SHEET, r' width="[^"]*"', ' width="256"', "the column"),
    (SHEET, r'<mergeCell ref="([A-Z]+)(\d+):', r'<mergeCell ref="\1\2:\1\2"/><mergeCell ref="\1\2:', "merge"),
    (SHEET, r'(<mergeCell ref="A(\d+):\w+"/>)', r'\1<mergeCell ref="B\2:C\2"/>', "merged cells overlap"),
    (SHEET, r"'Contents'!A1", "Contents list!A1", "which is no cell"),
    (SHEET, r"'Contents'!A1", "'Contents'!A0", "which is no cell"),
    (SHEET, r"'Contents'!A1", "'Content'!A1", "which is no sheet here"),
    (SHEET, r"(<hyperlink [^>]*>)", r"\1\1", "two links on"),
    (SHEET, r"<oddHeader>", f"<oddHeader>{'x' * 255}", "a header of"),
    (SHEET, r'<mergeCells count="', '<mergeCells count="9', "mergeCells says 9"),
    (
        SHEET,
        r"<hyperlinks>",
        '<conditionalFormatting sqref="A1"><cfRule dxfId="0"/></conditionalFormatting>\\g<0>',
        "no format 0",
    ),
    (NOTES, r'authorId="0"', 'authorId="5"', "a note of nobody"),
    (NOTES, r'(<comment ref=)"([A-Z]+)\d+"', r'\1"\g<2>1"', "boxes for"),
    (NOTES, r"(<comment .*?</comment>)", r"\1\1", "two notes on"),
    (SHEET, r"<legacyDrawing [^>]*>", "", "no legacy drawing"),
]

_IN_REPORT_WITH_CHARTS = [
    (TYPES, r'<Override PartName="/xl/charts/chart1.xml"[^>]*>', "", "chart1.xml: no kind of content"),
    (TYPES, r"/xl/charts/chart1.xml", "/xl/charts/chart99.xml", "chart99.xml: a kind of content for no part"),
    (SHEET, r"(<brk [^>]*>)", r"\1\1", "page breaks below the rows"),
    (DRAWING, r'cNvPr id="3"', 'cNvPr id="2"', "the id 2 twice"),
    (DRAWING, r"<xdr:row>\d+", "<xdr:row>999", "from 999"),
    (CHART, r'<c:axId val="\d+"', '<c:axId val="7"', "used"),
    (CHART, r"'At a glance'!|'Techniques'!", "'Nowhere'!", "cells that are not there"),
    (CHART, r'<c:ptCount val="\d+"', '<c:ptCount val="1"', "points of 1"),
]

TRIPS = "xl/worksheets/sheet4.xml"
_IN_BLANK_LOG = [
    (TRIPS, r'sqref="[^"]*"', 'sqref="A0"', "a drop-down on no cells"),
    (TRIPS, r' prompt="', f' prompt="{"x" * 255}', "prompt is too long"),
    (TRIPS, r' promptTitle="', f' promptTitle="{"x" * 32}', "promptTitle is too long"),
    (TRIPS, r"<formula1>[^<]*", f'<formula1>"{"x" * 256}"', "a list too long"),
    (TRIPS, r"<formula1>[^<]*", "<formula1>'Nowhere'!$A$1:$A$2", "a drop-down of what is not there"),
    (TRIPS, r"(<dataValidation .*?</dataValidation>)", r"\1\1", "drop-downs overlap"),
    (TRIPS, r'<dataValidations count="', '<dataValidations count="9', "dataValidations says 9"),
]
BREAKS = [
    *(Break(*each) for each in _IN_ANY_REPORT),
    *(Break(*each, "report") for each in _IN_REPORT_WITH_CHARTS),
    *(Break(*each, "blank log") for each in _IN_BLANK_LOG),
]
