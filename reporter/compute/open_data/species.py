"""Species in open data: which ones are counted, and what they are called."""

from reporter.schema.species import BLACK_BASS, BLACK_BASS_CODES, BY_CODE
from reporter.tidy.settings import Settings

_NOT_VERNACULAR = ", unspecified"


def counted_codes(settings: Settings) -> list[str]:
    """Return the codes of the species counted, sorted, all black bass as one; none where every one counts."""
    codes = settings.counted or frozenset()
    if codes >= BLACK_BASS_CODES:
        codes = codes - BLACK_BASS_CODES | {BLACK_BASS.code}
    return sorted(codes)


def common_name(code: str) -> str:
    """Return what people call a species."""
    return BY_CODE[code].name.removesuffix(_NOT_VERNACULAR)
