"""Money machines named."""

from planner.solution import money_machines, solve
from tests.planner.small_problems import small_problem

TIMBER = {
    "parts": [{"code": "box", "end_value": 14}, {"code": "boards"}],
    "offer": {"parts": {"boards": 1}},
}


def nail(**changes):
    return [{"code": "nail", "takes": {"boards": 1}, "makes": {"box": 1}} | changes]


def test_an_ordinary_problem_has_none():
    assert money_machines(small_problem()) == []
    assert money_machines(small_problem(part={"end_value": 9.99})) == []


def test_an_end_value_above_the_price_is_one():
    found = money_machines(small_problem(part={"end_value": 10.5}))
    assert len(found) == 1
    assert 'offer "boxes"' in found[0]
    assert '("box")' in found[0]
    assert "worth 10.5" in found[0]


def test_the_cheapest_step_counts_where_packs_are_held_back_and_the_last_where_not():
    steps = [{"from_packs": 1, "price": 8}, {"from_packs": 50, "price": 12}]
    problem = small_problem(part={"end_value": 10}, offer={"prices": steps})
    assert len(money_machines(problem)) == 1
    assert money_machines(problem, bounded=False) == []
    assert solve(problem, gap=0).status == "optimal"


def test_one_that_the_budget_holds_back_is_told_and_solved_all_the_same():
    problem = small_problem(part={"end_value": 12}, budget=100)
    assert len(money_machines(problem)) == 1
    assert money_machines(problem, bounded=False) == []
    plan = solve(problem, gap=0)
    assert plan.status == "optimal"
    assert plan.here_and_now[0].packs == 10


def test_a_budget_does_not_hold_back_what_costs_nothing():
    free = [{"from_packs": 1, "price": 0}]
    assert solve(small_problem(part={"end_value": 1}, budget=0, offer={"prices": free})).status == "unbounded"


def test_work_on_landing_and_holding_cost_are_counted():
    problem = small_problem(part={"end_value": 12}, offer={"work_minutes": 30}, work={"cost_per_hour": 6})
    assert money_machines(problem) == []
    assert money_machines(small_problem(part={"end_value": 12, "holding_cost": 1})) == []
    limited = small_problem(
        part={"end_value": 12}, offer={"work_minutes": 30}, work={"minutes_per_period": [60, 0, 0]}
    )
    assert len(money_machines(limited)) == 1
    assert money_machines(limited, bounded=False) == []
    assert solve(limited, gap=0).status == "optimal"


def test_a_recipe_that_makes_more_than_it_takes_is_one():
    recipes = [{"code": "breed", "takes": {"box": 1}, "makes": {"box": 2}}]
    problem = small_problem(part={"end_value": 5}, recipes=recipes, offers=[])
    assert 'recipe "breed" is a money machine: it makes more of "box"' in money_machines(problem)[0]
    assert solve(problem).status == "unbounded"


def test_an_offer_and_a_recipe_that_make_money_together_are_named_together():
    problem = small_problem(**TIMBER, recipes=nail())
    found = money_machines(problem, bounded=False)
    assert found[0].startswith('offer "boxes", recipe "nail" together are a money machine')
    assert solve(problem).reason == found[0]
    assert money_machines(small_problem(**TIMBER, recipes=nail(cost=5))) == []


def test_a_recipe_held_back_by_minutes_or_by_a_scarce_part_is_no_machine():
    tied = small_problem(**TIMBER, recipes=nail(work_minutes=10), work={"minutes_per_period": [60, 60, 60]})
    assert money_machines(tied, bounded=False) == []
    plan = solve(tied, gap=0)
    assert plan.status == "optimal"
    assert plan.here_and_now[0].packs == 18
    scarce = small_problem(
        **TIMBER | {"parts": [*TIMBER["parts"], {"code": "nails"}]},
        recipes=nail(takes={"boards": 1, "nails": 2}),
        stock=[{"part": "nails", "location": "shed", "quantity": 30}],
    )
    assert solve(scarce, gap=0).here_and_now[0].packs == 15


def test_an_offer_that_can_never_land_is_none():
    late = small_problem(part={"end_value": 11}, offer={"lead_periods": 2, "order_periods": [2]})
    assert money_machines(late) == []
