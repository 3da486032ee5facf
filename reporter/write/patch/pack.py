"""Packs a workbook's archive again with some parts changed; the others keep content, order and date."""

import copy
import shutil
import zipfile
from collections.abc import Collection, Mapping
from pathlib import Path

from reporter.write.patch.errors import CannotPatch


def repack(
    archive: zipfile.ZipFile, target: Path, changed: Mapping[str, bytes], dropped: Collection[str] = ()
) -> None:
    """Write the archive's parts to `target`, those of `changed` with new content, those of `dropped` not."""
    names = archive.namelist()
    if len(set(names)) != len(names):
        raise CannotPatch("it holds two parts of one name")
    with zipfile.ZipFile(target, "w", zipfile.ZIP_DEFLATED) as new:
        new.comment = archive.comment
        for entry in archive.infolist():
            if entry.filename in dropped:
                continue
            if entry.filename in changed:
                new.writestr(_entry(entry), changed[entry.filename])
            else:
                with archive.open(entry) as source, new.open(_entry(entry), "w") as part:
                    shutil.copyfileobj(source, part, 1 << 20)


def differing_parts(archive: zipfile.ZipFile, other: zipfile.ZipFile) -> set[str]:
    """Return the names of parts that are not in both archives with one content."""
    checks = [
        {(entry.filename, entry.file_size, entry.CRC) for entry in a.infolist()} for a in (archive, other)
    ]
    return {name for name, _, _ in checks[0] ^ checks[1]}


def _entry(entry: zipfile.ZipInfo) -> zipfile.ZipInfo:
    """Return the description of a part for a new archive; sizes and places are found when it is written."""
    made = copy.copy(entry)
    made.extra = b""  # sizes of the old archive may stand there
    return made
