"""Each workbook to fill in has a code, a file name and sheets of its own."""

from inventory.sheets.kinds import ALL_TABLES, BY_CODE, KINDS
from inventory.sheets.layout import TABLES


def test_codes_and_file_names_are_told_apart():
    assert len(BY_CODE) == len(KINDS) == len({kind.file for kind in KINDS})
    assert all(kind.file.endswith(".xlsx") and kind.name and kind.about.endswith(".") for kind in KINDS)


def test_every_sheet_is_in_a_matter_of_its_own_and_all_but_counts_in_everything():
    alone = [table for kind in KINDS if kind.code != "everything" for table in kind.tables]
    assert sorted(table.title for table in alone) == sorted(table.title for table in ALL_TABLES)
    assert BY_CODE["everything"].tables == TABLES
