"""Measures of one hive: inches as a joiner writes them, links that add up, balloons that keep apart."""

from itertools import pairwise

import pytest

from inventory.stack import Box, Hive, chain_of, draw, inches
from inventory.stack.chain import BALLOON_APART


@pytest.mark.parametrize(
    ("units", "words"),
    [(154, "9⅝"), (106, "6⅝"), (91, "5 11/16"), (260, "16¼"), (160, "10"), (8, "½"), (3, "3/16")],
)
def test_inches_are_written_as_fractions(units, words):
    assert inches(units) == words


def tall_hive():
    boxes = (Box(depth="deep", width=10),) * 2 + (Box(depth="medium", width=10),) * 2
    return draw(Hive(boxes=boxes, excluder_on=2, feeder=True))


def test_each_box_has_its_link():
    assert [link.label for link in chain_of(tall_hive()).measures] == ["6⅝", "6⅝", "9⅝", "9⅝"]


def test_ends_close_together_are_dots_not_ticks():
    chain = chain_of(tall_hive())
    assert len(chain.dots) == 2  # above and below the excluder
    assert chain.dots[1] - chain.dots[0] == 10
    assert not set(chain.dots) & set(chain.ticks)


def test_balloons_are_numbered_top_down_and_keep_apart():
    balloons = chain_of(tall_hive()).balloons
    assert [balloon.number for balloon in balloons] == list(range(1, len(balloons) + 1))
    assert balloons[0].name == "outer and inner cover"
    gaps = [below.y - above.y for above, below in pairwise(balloons)]
    assert min(gaps) >= BALLOON_APART


def test_balloons_stay_above_the_ground():
    chain = chain_of(tall_hive())
    assert max(balloon.y for balloon in chain.balloons) <= chain.height - 24


def test_the_stand_is_ground_and_has_no_balloon():
    assert "stand" not in [balloon.name for balloon in chain_of(tall_hive()).balloons]


def test_a_colony_without_boxes_has_no_measures():
    assert chain_of(draw(Hive(floor=False, cover=""))).measures == ()
