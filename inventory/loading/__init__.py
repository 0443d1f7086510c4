"""A keeper's workbook into the books: read against what they know, tried, then posted whole or not at all.

Takes bytes or a Sheet record, the day, who and the digest of the file; gives what it changed. The same file
posts once. A dry run is the posting itself, undone at its end, so that it tells exactly what posting would do.
"""

from inventory.loading.changes import Change, Loaded
from inventory.loading.files import (
    FaultySheet,
    blank_workbook,
    digest_of,
    load_file,
    read,
    workbook_of,
)
from inventory.loading.known import known_by_books
from inventory.loading.posting import BooksMoved, dry_run, load

__all__ = [
    "BooksMoved",
    "Change",
    "FaultySheet",
    "Loaded",
    "blank_workbook",
    "digest_of",
    "dry_run",
    "known_by_books",
    "load",
    "load_file",
    "read",
    "workbook_of",
]
