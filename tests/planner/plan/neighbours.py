"""A study of the small season's order as the solver might tell it. Figures by hand; used by tests of what is said."""

from planner.solution.nearby.records import BudgetPoint, LessMoney, Moved, Nearby


def moved(step=1, cost=72.5, worth=-30.0, **changed):
    """`worth`: change of the objective, the cost taken off."""
    facts = {"offer": "north-box", "period": 0, "packs": 2, "over_budget": 0.0, "served": True, "limit": ""}
    return Moved(**{**facts, "step": step, "cost_change": cost, "worth_change": worth, **changed})


def point(budget, objective, **changed):
    facts = {"spend": 0.8 * budget, "bound": objective + 1, "fractions": objective + 3, "packs": {}}
    return BudgetPoint(**{"budget": budget, "objective": objective, **facts, **changed})


def nearby(**changed):
    """The order's budget of 250 among twelve; ten boxes more earn 42.50 for 72.50."""
    worths = (-400, -220, 20, 120, 180, 200, 212, 215, 216, 216, 216, 216)
    facts = {
        "moves": (
            moved(1),
            moved(-1, -65.0, -120.0),
            moved(1, 31.0, -31.0, offer="north-sugar", packs=1),
            moved(-1, -31.0, 0.0, offer="north-sugar", packs=1, served=False),
        ),
        "points": tuple(point(50.0 * at, float(worth)) for at, worth in enumerate(worths)),
        "knee": 3,
        "next_budget": 100.0,
        "next_earns": 15.0,
        "less": LessMoney(
            budget=50.0, lost=420.0, changes=(("north-box", 0, 2, 0), ("north-sugar", 0, 1, 2))
        ),
        "budget_price": 0.21,
        "seconds": 0.4,
        "not_told": "",
    }
    return Nearby(**{**facts, **changed})
