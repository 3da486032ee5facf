"""The formats of one workbook, made from the style when they are first asked for."""

from xlsxwriter.format import Format
from xlsxwriter.workbook import Workbook

from reporter.books.blocks import Look
from reporter.write.style import LINKED, ROLES, Paper, Role, Trait, cell_properties


class Formats:
    """Hands out one format for every role and every kind of cell."""

    def __init__(self, workbook: Workbook, paper: Paper) -> None:
        self._workbook = workbook
        self.paper = paper
        self._made: dict[object, Format] = {}

    def role(self, role: Role, *, wrap: bool = False, link: bool = False) -> Format:
        """Return the format of text in a role, of text that leads somewhere."""
        if (role, wrap, link) not in self._made:
            more = {**({"text_wrap": True} if wrap else {}), **(LINKED if link else {})}
            self._made[role, wrap, link] = self._workbook.add_format({**ROLES[role], **more})
        return self._made[role, wrap, link]

    def cell(self, look: Look, traits: frozenset[Trait] = frozenset()) -> Format:
        """Return the format of a cell of a table."""
        if (look, traits) not in self._made:
            properties = cell_properties(look, self.paper, traits)
            self._made[look, traits] = self._workbook.add_format(properties)
        return self._made[look, traits]
