"""Records of what lies next door."""

from dataclasses import FrozenInstanceError

import pytest

from planner.solution.nearby.records import LessMoney


def test_records_are_never_changed():
    less = LessMoney(budget=20.0, lost=30.0, changes=())
    with pytest.raises(FrozenInstanceError):
        less.lost = 0.0
