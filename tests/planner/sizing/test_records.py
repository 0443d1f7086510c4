"""Records of the sizing problem."""

from dataclasses import FrozenInstanceError

import pytest

from tests.planner.small_problems import small_problem


def test_records_cannot_be_changed():
    with pytest.raises(FrozenInstanceError):
        small_problem().periods = 4


def test_packs_are_whole_by_default_only_in_here_and_now_offers():
    assert small_problem().offers[0].is_whole
    assert not small_problem(offer={"when": "later"}).offers[0].is_whole
    assert small_problem(offer={"when": "later", "whole": True}).offers[0].is_whole
    assert not small_problem(offer={"whole": False}).offers[0].is_whole
