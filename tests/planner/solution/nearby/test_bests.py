"""Several budgets, each in its share of the time."""

from planner.solution.clock import Clock
from planner.solution.nearby.bests import Best, bests


class Engine:
    """Tells of each budget what it was told itself, and of fractions twice the budget."""

    def __init__(self, told, seconds=100.0):
        self.told, self.clock, self.asked = told, Clock(seconds), []

    def best(self, budget, seconds, *, closely):
        self.asked.append((budget, round(seconds), closely))
        return self.told[budget]

    def in_fractions(self, budgets):
        return [2 * budget for budget in budgets]


def best(bound):
    return Best(packs={}, objective=0.0, bound=bound)


def test_each_budget_has_its_share_of_what_is_left_also_for_those_after_them():
    engine = Engine({10: best(1), 20: best(2)})
    found, fractions = bests(engine, [10, 20], [20], after=2)
    assert engine.asked == [(10, 25, False), (20, 33, True)]
    assert (list(found), fractions) == ([10, 20], {10: 20, 20: 40})


def test_a_budget_of_which_nothing_is_known_has_no_point():
    assert bests(Engine({10: best(None), 20: best(2)}), [10, 20], [])[1] == {20: 40}


def test_out_of_time_nothing_is_asked():
    engine = Engine({10: best(1)}, seconds=0.0)
    assert (bests(engine, [10], []), engine.asked) == (({}, {}), [])
