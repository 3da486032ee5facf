"""Texts of a copy past the guard: what may not be read is blank, and it is kept in mind that it is."""

from dataclasses import dataclass, field

from reporter.compute.clients.guard import Guard
from reporter.schema.log import folded_code


@dataclass(frozen=True, slots=True)
class Texts:
    """Texts of one log for its clients. kept_back: heading and text of what was kept back from somebody."""

    guard: Guard
    kept_back: dict[tuple[str, str], None] = field(default_factory=dict)

    def to(self, client: str, heading: str, text: str) -> str:
        """Return a text as a client may read it: "" where it names someone else, or a secret."""
        if self.guard.allows(text, folded_code(client)):
            return text
        self.kept_back[heading, text] = None
        return ""
