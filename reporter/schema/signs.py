"""Texts that hold numbers, as they are compared: what stands within a number or between two still counts."""

import re
from functools import lru_cache

_AROUND = re.compile(r"(?<=\d)\s*([^\w\s]+)\s*(?=\d)")  # 1 / 2 is 1/2
_GAP = re.compile(r"(?<=\d)[\s\u2010-\u2015-]+(?=\d)")  # 1-1/2 is 1 1/2
_KEPT = re.compile(r"\w|(?<=\d)\W+(?=\d)|(?<!\w)[-.,](?=\d)")


@lru_cache(maxsize=1_024)  # columns repeat their values
def folded_with_signs(text: str) -> str:
    """Return a text as `folded` does a name, with signs between two digits, and a minus or point before one.

    So 1/4 and 14 are two, and so are 3.5 and 35, .5 and 5; 1/2oz and 1/2-OZ are one.
    """
    spaced = text.casefold().replace("_", " ")
    return "".join(_KEPT.findall(_GAP.sub(" ", _AROUND.sub(r"\1", spaced))))
