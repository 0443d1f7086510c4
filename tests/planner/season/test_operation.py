"""The operation's record answers for its parts."""

import pytest

from tests.planner.operations import operation


def test_a_part_is_found_by_code_and_by_traits():
    whole = operation()
    assert whole.part("box-medium-10").width == 10
    assert whole.find_part(kind="box", depth="medium", width=10).code == "box-medium-10"
    assert whole.find_part(kind="box", depth="medium", width=10, flat=True).code == "box-medium-10-flat"
    assert (
        whole.find_part(kind="frame", depth="deep", comb="drawn", comb_use="brood").code == "comb-deep-brood"
    )


def test_an_unknown_part_is_a_key_error_and_unknown_traits_are_none():
    whole = operation()
    with pytest.raises(KeyError):
        whole.part("box-huge-10")
    assert whole.find_part(kind="box", depth="medium", width=12) is None


def test_the_invented_operation_is_one_of_eight_yards_and_some_hundred_colonies():
    whole = operation()
    assert len(whole.yards) == 9
    assert sum(group.colonies for group in whole.colonies) == 110
    assert all("invented" in supplier.name for supplier in whole.suppliers)
