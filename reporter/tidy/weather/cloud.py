"""Cloud in eighths of the sky: the greatest layer that is named."""

import math
import re

import numpy as np

from reporter.read.weather.raw import RawWeather
from reporter.schema.weather_files.limits import OKTAS
from reporter.tidy.weather.columns import each_text
from reporter.tidy.weather.said import Floats

_WORD = re.compile(rf"\b({'|'.join(OKTAS)})", re.IGNORECASE)
_CODE = re.compile(r"\b0?([0-9])\b")
_OBSCURED = 9  # code of a sky that cannot be seen: reported where fog or snow fills it


def cloud_of(raw: RawWeather) -> Floats:
    """Return oktas, NaN where not known."""
    if "cloud" not in raw.columns:
        return np.full(len(raw.lines), math.nan)
    return each_text(raw.columns["cloud"], _oktas)


def _oktas(text: str) -> float:
    """Read layers in words (FEW, BKN:07), else in the archives' codes: 0 to 8 oktas, 9 obscured."""
    words = _WORD.findall(text)
    if words:
        return max(OKTAS[word.upper()] for word in words)
    codes = [int(code) for code in _CODE.findall(text)]
    return math.nan if not codes else 8.0 if max(codes) >= _OBSCURED else float(max(codes))
