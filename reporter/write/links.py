"""Addresses of links, as the writing library takes them."""

import re
from urllib.parse import quote

from reporter.books.blocks import Link

_NOT_AS_IT_IS = re.compile(r"[\x00-\x7f\ud800-\udfff]+")  # the latter: bytes of a name that are no text


def address(link: Link) -> str:
    """Return the address of a link; # and other signs with a meaning in addresses are escaped in the path."""
    sheet = link.sheet.replace("'", "''")
    if not link.file:
        return f"internal:'{sheet}'!{link.cell}"
    path = _NOT_AS_IT_IS.sub(lambda found: quote(found[0], "/:", errors="surrogateescape"), link.file)
    return f"external:{path}#'{sheet}'!{link.cell}" if link.sheet else f"external:{path}"
