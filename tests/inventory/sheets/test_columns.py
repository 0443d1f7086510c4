"""A column of a sheet is found by its key."""

import pytest

from inventory.sheets.cells import Text
from inventory.sheets.columns import Table, column


def test_a_column_stands_where_it_is_listed():
    keys = ("first", "second")
    table = Table(title="T", about="", columns=tuple(column(key, key, Text(), "") for key in keys))
    assert [table.position(key) for key in keys] == [1, 2]
    with pytest.raises(StopIteration):
        table.position("third")
