"""What comes free: lost colonies' gear, and drawing that ends with its flow."""

from planner.requirement.arrivals import arrivals_of, ends_of_drawing
from planner.requirement.tokens import DRAWING, RESTED
from planner.sizing.reading import problem_of
from planner.solution import solve


def test_gear_of_winters_and_summers_dead_and_of_united_colonies_arrives_in_its_week(season_gear, projected):
    gear, projection = season_gear(), projected(count=1)[0]
    boxes = {}
    for dead in projection.deadouts:
        boxes[dead.week] = boxes.get(dead.week, 0) + dead.returned["box-deep-10"]
    arrived = {}
    for arrival in arrivals_of(gear, projection):
        if arrival.part == "box-deep-10":
            arrived[arrival.period] = arrived.get(arrival.period, 0) + arrival.quantity
    assert arrived == {week: pieces for week, pieces in boxes.items() if pieces}
    assert len(arrived) == 3


def test_all_that_may_be_drawn_is_over_at_some_flow_s_end(season_gear, projected):
    gear, projection = season_gear(), projected(count=1)[0]
    ends = list(ends_of_drawing(gear, projection))
    given = sum(arrival.quantity for arrival in arrivals_of(gear, projection) if arrival.part == DRAWING)
    assert sum(use.units for use in ends) == given
    assert all(use.must and use.spends == {RESTED: 1} and use.first == use.last for use in ends)


def two_flows(*, first, second):
    """Ten combs wanted in period 6, foundation for all of them; frames the bees draw in periods 1 to 2 and 5 to 6."""
    return problem_of(
        {
            "periods": 8,
            "parts": [{"code": code} for code in ("framed", "comb", DRAWING, RESTED)],
            "locations": ["shed"],
            "stock": [{"part": "framed", "location": "shed", "quantity": 10}],
            "recipes": [
                {
                    "code": "draw",
                    "takes": {"framed": 1, DRAWING: 1},
                    "makes": {"comb": 1, RESTED: 1},
                    "cost": 1,
                },
                {"code": "rest", "takes": {DRAWING: 1}, "makes": {RESTED: 1}},
            ],
            "scenarios": [
                {
                    "code": "s",
                    "probability": 1,
                    "uses": [
                        {
                            "code": "super",
                            "location": "shed",
                            "first": 6,
                            "last": 6,
                            "units": 10,
                            "value": 9,
                            "keeps": {"comb": 1},
                        },
                        *(
                            {
                                "code": f"drawing-over-{week}",
                                "location": "shed",
                                "first": week,
                                "last": week,
                                "units": frames,
                                "value": 0,
                                "must": True,
                                "spends": {RESTED: 1},
                            }
                            for week, frames in ((2, first), (6, second))
                        ),
                    ],
                    "arrivals": [
                        {"part": DRAWING, "location": "shed", "period": week, "quantity": frames}
                        for week, frames in ((1, first), (5, second))
                    ],
                }
            ],
        }
    )


def test_drawing_left_over_in_one_flow_is_of_no_use_in_the_next():
    # Only a must ends the first flow's drawing; the solver still draws then what it wants for later.
    plan = solve(two_flows(first=4, second=3))
    assert plan.objective == 7 * 9 - 7
    made = {}
    for line in plan.scenarios[0].made:
        if line.recipe == "draw":
            made[line.period] = made.get(line.period, 0) + line.units
    assert sum(units for period, units in made.items() if period <= 2) == 4
    assert sum(units for period, units in made.items() if 5 <= period <= 6) == 3


def test_in_a_dearth_nothing_is_drawn():
    data_of_dearth = two_flows(first=20, second=0.5)
    plan = solve(data_of_dearth)
    drawn = {line.period for line in plan.scenarios[0].made if line.recipe == "draw" and line.units > 1e-6}
    assert drawn <= {1, 2, 5, 6}
