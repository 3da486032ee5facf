"""Print a command block of the README, by the word after its fence: ```sh build."""

import re
import sys
from pathlib import Path


def block(name: str) -> str:
    """Return the commands of the block `name`; SystemExit where the README has none."""
    text = Path("README.md").read_text(encoding="utf-8")
    found = re.search(rf"^```sh {re.escape(name)}\n(.*?)^```$", text, re.MULTILINE | re.DOTALL)
    if found is None:
        raise SystemExit(f"README.md has no block ```sh {name}")
    return found[1]


if __name__ == "__main__":
    sys.stdout.write(block(sys.argv[1]))
