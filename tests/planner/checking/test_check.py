"""The whole check: a section whose regrets are true, the same again, and what it could not reach said."""

from planner.checking.check import STAGE, check
from tests.planner.checking.small import GAP, SEASONS, doubts


def run(planned, *keys, **settings):
    whole, told, problem, plan = planned
    usual = {"seed": 1, "gap": GAP, "seconds": 300.0, "doubts": doubts(*keys)}
    return check(whole, told, problem, plan, **{**usual, **settings})


def test_a_check_tells_each_answer_low_and_high(planned):
    stages = []
    section = run(planned, "survival_share", "nuc_price", "honey_price", progress=stages.append)
    assert {row.key for row in section.rows} == {"survival_share", "honey_price"}  # no nucs are sold
    assert section.seasons == SEASONS
    assert all(0 <= end.regret <= end.regret_most for row in section.rows for end in row.ends)
    assert stages[0] == STAGE and stages[-1] == f"{STAGE}, 4 of 4"


def test_dearer_honey_is_worth_more(planned):
    # the worth of a season counts gear that deadouts give back and not the bees lost: of survival it says little
    row = run(planned, "honey_price").row("honey_price")
    assert row.low.worth < 0 < row.high.worth


def test_what_time_does_not_reach_is_named(planned):
    section = run(planned, "survival_share", seconds=0.2)
    assert section.rows == ()
    assert section.not_reached == ("colonies that come through the winter",)
    assert "Time was up" in section.sentences[0]
