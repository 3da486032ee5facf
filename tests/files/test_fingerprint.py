from pathlib import Path

from reporter.files.fingerprint import sha256_of

# FIPS 180-4 examples (National Institute of Standards and Technology), published.
OF_ABC = "ba7816bf8f01cfea414140de5dae2223b00361a396177a9cb410ff61f20015ad"
OF_MILLION_A = "cdc76e5c9914fb9281a1c7e284d73e67f1809a48a497200e046d39ccc7112cd0"


def test_fingerprints_are_the_published_ones(tmp_path: Path) -> None:
    for text, known in ((b"abc", OF_ABC), (b"a" * 1_000_000, OF_MILLION_A)):
        (tmp_path / "file").write_bytes(text)
        assert sha256_of(tmp_path / "file") == known
