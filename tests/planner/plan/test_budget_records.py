"""What a move gains, and where the curve's knee is."""

from decimal import Decimal

from tests.planner import made


def test_a_move_gains_what_it_earns_beyond_its_cost():
    move = made.make_move(cost=Decimal(71), earned=Decimal(40))
    assert move.gain == Decimal(-31)
    assert move.sentence == f"{move.head} {move.said}."


def test_the_knee_is_one_of_the_points_or_none():
    section = made.make_budgets()
    assert section.at_knee.budget == Decimal(3000)
    assert made.make_budgets(points=()).at_knee is None


def test_a_change_says_whether_it_is_a_drop():
    section = made.make_budgets()
    assert [change.is_less for change in section.less.changes] == [True, False]
