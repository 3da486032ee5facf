"""Small OpenDocument spreadsheets, made by hand."""

import zipfile
from pathlib import Path

MIMETYPE = "application/vnd.oasis.opendocument.spreadsheet"
_CONTENT = (
    '<?xml version="1.0" encoding="UTF-8"?><office:document-content '
    'xmlns:office="urn:oasis:names:tc:opendocument:xmlns:office:1.0" '
    'xmlns:table="urn:oasis:names:tc:opendocument:xmlns:table:1.0" '
    'xmlns:text="urn:oasis:names:tc:opendocument:xmlns:text:1.0"><office:body><office:spreadsheet>'
    "{tables}</office:spreadsheet></office:body></office:document-content>"
)
_MANIFEST = (
    '<?xml version="1.0" encoding="UTF-8"?><manifest:manifest '
    'xmlns:manifest="urn:oasis:names:tc:opendocument:xmlns:manifest:1.0"><manifest:file-entry '
    f'manifest:full-path="/" manifest:media-type="{MIMETYPE}"/><manifest:file-entry '
    'manifest:full-path="content.xml" manifest:media-type="text/xml"/></manifest:manifest>'
)


def ods(path: Path, tables: str) -> Path:
    """Save a spreadsheet of these tables."""
    with zipfile.ZipFile(path, "w", zipfile.ZIP_DEFLATED) as archive:
        archive.writestr("mimetype", MIMETYPE, zipfile.ZIP_STORED)
        archive.writestr("META-INF/manifest.xml", _MANIFEST)
        archive.writestr("content.xml", _CONTENT.format(tables=tables))
    return path


def table(name: str, *rows: str) -> str:
    return f'<table:table table:name="{name}">{"".join(rows)}</table:table>'


def row(*cells: str, more: str = "") -> str:
    return f"<table:table-row {more}>{''.join(cells)}</table:table-row>"


def cell(kind: str, value: str, more: str = "") -> str:
    name = {"date": "date-value", "time": "time-value", "boolean": "boolean-value"}.get(kind, "value")
    text = f"<text:p>{value}</text:p>" if kind == "string" else ""
    said = "" if kind == "string" else f' office:{name}="{value}"'
    return f'<table:table-cell office:value-type="{kind}"{said} {more}>{text}</table:table-cell>'
