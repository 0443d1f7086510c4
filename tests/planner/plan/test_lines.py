"""Lines by supplier: their order, their sums, and how long they can wait. Figures by hand (see small.py)."""

from dataclasses import replace
from decimal import Decimal

from planner.plan import report_of
from tests.planner.plan import small


def report(operation=None, problem=None, plan=None):
    return report_of(
        operation or small.operation(), small.assumptions(), problem or small.problem(), plan or small.plan()
    )


def test_the_line_waits_to_the_last_day_that_price_lead_time_and_bench_allow():
    made = report_of(small.operation(), small.assumptions(), small.problem(), small.plan())
    box, sugar = made.lines
    assert box.order_by == small.operation().offers[0].open_until
    assert "price holds until 31 January 2027" in box.order_by_why
    assert sugar.order_by.isoformat() == "2027-08-24"  # week 40 less two weeks' lead
    assert made.order_by == box.order_by


def test_time_at_the_bench_brings_the_last_day_forward():
    """24 weeks to the first super, 3 of lead, and 600 minutes at 100 a week: 15 weeks from the day of the order."""
    scenarios = [small.solved(number, wanted) for number, wanted in enumerate(small.WANTED)]
    scenarios[3]["work"] = [0] * 10 + [600] + [0] * 41
    offers = (small.operation().offers[0], small.operation().offers[1])
    open_ended = tuple(type(each)(**{**vars(each), "open_until": None}) for each in offers)
    made = report_of(
        small.operation(offers=open_ended),
        small.assumptions(),
        small.problem(work={"minutes_per_period": [100] * 52, "cost_per_hour": 0}),
        small.plan(scenarios=scenarios),
    )
    assert made.lines[0].order_by.isoformat() == "2027-03-16"
    assert "with 6 weeks at the bench" in made.lines[0].order_by_why


def test_a_price_that_ends_before_the_order_can_go_out_never_puts_it_in_the_past():
    offers = tuple(replace(each, open_until=small.DAY) for each in small.operation().offers)
    made = report(operation=small.operation(offers=offers))
    assert made.order_by == small.DAY


def test_a_line_nothing_presses_says_so():
    offers = tuple(replace(each, open_until=None) for each in small.operation().offers)
    stock = [{"part": small.BOX, "location": "shed", "quantity": 40}]
    made = report(operation=small.operation(offers=offers), problem=small.problem(stock=stock))
    assert made.lines[0].order_by_why == "no day presses; ordered with the rest"


def test_lines_are_numbered_through_dearest_first():
    assert [(line.number, line.offer) for line in report().lines] == [(1, "north-box"), (2, "north-sugar")]


def test_each_week_of_ordering_is_an_order_with_its_own_fee():
    bought = [
        {"offer": "north-box", "period": 0, "packs": 2, "units": {small.FLAT: 10}, "cost": 145.0},
        {"offer": "north-sugar", "period": 30, "packs": 1, "units": {"sugar": 50}, "cost": 31.0},
    ]
    fees = [{"supplier": "north", "period": 0, "fee": 24.0}, {"supplier": "north", "period": 30, "fee": 9.0}]
    data = small.problem_data()
    data["offers"][1]["order_periods"] = [30]
    data["suppliers"][0]["order_fee"] = [24.0] * 30 + [9.0] * 22
    made = report(
        problem=small.problem(offers=data["offers"], suppliers=data["suppliers"]),
        plan=small.plan(here_and_now=bought, fees=fees, spend=209.0),
    )
    assert [(order.period, order.fee, order.total) for order in made.orders] == [
        (0, Decimal("24.00"), Decimal("169.00")),
        (30, Decimal("9.00"), Decimal("40.00")),
    ]
    assert made.orders[1].order_by >= made.orders[0].order_by


def test_goods_come_their_lead_time_after_the_last_day():
    order = report().orders[0]
    assert (order.due_on - order.order_by).days == 21
    assert order.lines[1].due_on == order.lines[1].order_by.replace(month=9, day=7)
