"""A fault of the files: which file, line and column, what is wrong, what would be right.

Pure records; FaultsFound carries all of them at once.
"""

from dataclasses import dataclass

PUT_BACK = "put the file back as export_all wrote it"
MISSING = "the file is missing"


@dataclass(frozen=True, kw_only=True)
class Fault:
    """`line` counts as an editor does, the heading is line 1; 0 where the whole file is meant."""

    file: str
    line: int = 0
    column: str = ""
    what: str
    remedy: str

    @property
    def row(self):
        return (self.file, str(self.line or ""), self.column, self.what, self.remedy)


class FaultsFound(Exception):
    """Everything that is wrong with the files; nothing was loaded."""

    def __init__(self, faults):
        self.faults = tuple(faults)
        super().__init__(f"{len(self.faults)} faults in the files")


class CellFault(ValueError):
    """One cell cannot be read: `what` is wrong and what would be right."""

    def __init__(self, what, remedy):
        self.what, self.remedy = what, remedy
        super().__init__(what)
