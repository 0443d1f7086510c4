"""What the order leaves open, by hand (see small.py)."""

from decimal import Decimal

from planner.plan import report_of
from planner.plan.facts import Facts
from planner.plan.sections import later_lines, no_offers, obtainable, requirement, shortages
from planner.plan.text import as_text
from planner.sizing.reading import problem_of
from planner.solution import solve
from tests.planner.plan import small


def facts(problem=None, plan=None, operation=None):
    return Facts(
        operation=operation or small.operation(),
        assumptions=small.assumptions(),
        problem=problem or small.problem(),
        plan=plan or small.plan(),
    )


GUARDS = small.use("guard/creek", "creek", 41, 51, 12, 2.6, {"guard-10": 1})


def with_use(use):
    data = small.problem_data()
    for scenario in data["scenarios"]:
        scenario["uses"].append(use)
    return problem_of(data)


def test_a_part_nobody_sells_is_named_with_its_number_and_week():
    problem = with_use(GUARDS)
    plan = solve(problem)
    (missing,) = no_offers(facts(problem, plan))
    assert missing.part == "guard-10" and missing.missing == 12
    assert "No offer for ten-frame mouse guards: nobody on your price list sells them" in missing.text
    assert "12 more are needed, the first by 14 September 2027" in missing.text
    made = report_of(small.operation(), small.assumptions(), problem, plan)
    assert "No offer for ten-frame mouse guards" in as_text(made).replace("\n", " ")


def test_a_part_nobody_lists_but_bought_in_season_tells_the_price_reckoned_with():
    data = small.problem_data()
    data["suppliers"].append({"code": "in-season"})
    hurried = {"code": "in-season/guard-10", "supplier": "in-season", "parts": {"guard-10": 1}}
    hurried |= {"prices": [{"from_packs": 1, "price": 3.6}], "order_periods": [40], "when": "later"}
    data["offers"].append({**hurried, "max_packs": 20})
    for scenario in data["scenarios"]:
        scenario["uses"].append(GUARDS)
    problem = problem_of(data)
    (missing,) = no_offers(facts(problem, solve(problem)))
    assert missing.part == "guard-10" and missing.missing == 12
    assert "bought in season they are reckoned at $3.60 each, at most 20 an order" in missing.text
    assert "do without" not in missing.text


def test_a_super_pulled_in_mid_flow_is_nothing_left_out():
    left_on = small.use("left-on/creek/clover/strong/1", "creek", 41, 51, 500, 2.6, {"guard-10": 1})
    problem = with_use(left_on)
    rows = shortages(facts(problem, solve(problem)))
    assert not [row for row in rows if "left" in row.what]


def test_what_is_in_store_is_taken_off_before_a_part_is_called_missing():
    data = small.problem_data()
    data["stock"].append({"part": "guard-10", "location": "shed", "quantity": 12})
    for scenario in data["scenarios"]:
        scenario["uses"].append(GUARDS)
    problem = problem_of(data)
    assert no_offers(facts(problem, solve(problem))) == ()


def test_a_part_on_the_price_list_or_made_of_what_is_on_it_is_not_named():
    assert no_offers(facts()) == ()
    assert {small.BOX, small.FLAT, "sugar"} <= obtainable(facts())
    assert "guard-10" not in obtainable(facts())


def test_what_pays_and_is_left_out_is_told_with_its_worth_and_its_yards():
    problem = with_use(GUARDS)
    rows = shortages(facts(problem, solve(problem)))
    row = next(row for row in rows if row.what == "mouse guards")
    assert (row.wanted, row.left_out, row.lost, row.in_100) == (12, 12, Decimal("31.20"), 100)
    assert row.yards == ("Creek",)


def test_what_is_bought_in_season_is_told_as_a_mean():
    (line,) = later_lines(facts())
    assert line.name == "white sugar"
    assert line.in_100 == 25
    assert line.cost == Decimal("2.38")  # 10 lb at 0.95 in one season of four: 2.375
    assert line.units[0].units == 2


def test_requirement_tells_all_yards_and_each_yard_by_week():
    rows = {(row.part, row.yard): row for row in requirement(facts())}
    assert rows[small.BOX, ""].mean[24] == 11  # (8 + 12 + 12 + 12) / 4
    assert rows[small.BOX, "hill"].mean[26] == 3  # (0 + 0 + 4 + 8) / 4
    assert rows[small.BOX, ""].high[30] == 20
    assert rows[small.BOX, ""].mean[31] == 0
    assert rows[small.BOX, "hill"].yard_name == "Hill"
