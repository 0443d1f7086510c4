"""The rule of thumb, by hand.

The usual full hive and its forty frames and forty sheets at ten frames: common practice, no source.
"""

from dataclasses import replace
from decimal import Decimal

from planner.season.assumptions import assumptions_of
from planner.sizing.records import Offer, PriceStep, Problem, Recipe, Scenario, Stock, Supplier, Use
from planner.sizing.records import Part as SizingPart
from planner.trial import bill_of, cut_alike, rule_of_thumb
from tests.planner.operations import operation


def offer(code, part, units, price, **changed):
    steps = (PriceStep(from_packs=1, price=price),)
    return Offer(**{"code": code, "supplier": "s", "parts": {part: units}, "prices": steps, **changed})


OFFERS = (
    offer("deep", "box-deep-10", 1, 26),
    offer("deep-flat", "box-deep-10-flat", 5, 92.5),
    offer("medium", "box-medium-10", 1, 22),
    offer("framed-d", "frame-deep-foundation", 10, 41),
    offer("framed-m", "frame-medium-foundation", 10, 37),
    offer("floor", "floor-10", 1, 16.5),
    offer("inner", "inner-cover-10", 1, 12.75),
    offer("cover", "cover-10", 1, 24.5),
)
NAIL = Recipe(code="assemble", takes={"box-deep-10-flat": 1}, makes={"box-deep-10": 1}, work_minutes=15.0)


def hives(colonies=10, **changed):
    """Ten colonies in two deeps, of which seven come through; nothing in store."""
    whole = operation()
    group = next(each for each in whole.colonies if each.hive_set == "two-deeps-10")
    return replace(whole, colonies=(replace(group, colonies=colonies),), stock=(), **changed)


def problem(**changed):
    facts = {
        "periods": 52,
        "parts": tuple(SizingPart(code=code) for each in OFFERS for code in each.parts),
        "locations": ("shed",),
        "suppliers": (Supplier(code="s", order_fee=50.0, free_from=2000.0),),
        "offers": OFFERS,
        "recipes": (NAIL,),
        "scenarios": (Scenario(code="only", probability=1.0),),
    }
    return Problem(**{**facts, **changed})


def answers(**given):
    """Seven of ten come through; of the dead colonies' gear nothing can be used again, unless given otherwise."""
    told = {"survival_share": 0.7, "deadout_sound_share": 0, **given}
    return assumptions_of(told, start=operation().day, region="north")


def test_full_hives_replace_the_expected_dead_and_each_colony_gets_a_super():
    """3 hives of two deeps: 6 boxes, 60 frames with foundation; 10 supers: 10 boxes, 100 frames."""
    assert rule_of_thumb(hives(), answers(), problem()) == {
        ("deep-flat", 0): 2,
        ("framed-d", 0): 6,
        ("medium", 0): 10,
        ("framed-m", 0): 10,
        ("floor", 0): 3,
        ("inner", 0): 3,
        ("cover", 0): 3,
    }


def test_a_dearer_box_in_pieces_is_left_where_evenings_cost_more_than_they_save():
    """18.50 and a quarter hour at 40 an hour is 28.50: more than the box ready made at 26."""
    packs = rule_of_thumb(hives(), answers(hour_value=40), problem())
    assert ("deep-flat", 0) not in packs and packs["deep", 0] == 6


def test_an_envelope_does_not_see_what_the_dead_leave():
    """Sound or not, the three dead colonies' hives are bought anew: no quick reckoning counts on them."""
    sound = {"deadout_sound_share": 1, "comb_moth_share": 0, "comb_culled": 0}
    assert rule_of_thumb(hives(), answers(**sound), problem()) == rule_of_thumb(hives(), answers(), problem())


def test_of_two_suppliers_the_one_is_left_whose_shipping_costs_more_than_it_saves():
    near = Supplier(code="near", order_fee=5.0)
    cheaper = offer("near-floor", "floor-10", 1, 15, supplier="near")
    facts = problem(offers=(*OFFERS, cheaper), suppliers=(*problem().suppliers, near))
    assert ("near-floor", 0) not in rule_of_thumb(hives(), answers(), facts)  # 4.50 saved on three, 5 to ship
    assert rule_of_thumb(hives(), answers(target_colonies=14), facts)["near-floor", 0] == 7


def test_what_is_in_store_is_taken_off_combs_before_frames():
    store = (
        Stock(part="box-deep-10", location="shed", quantity=4),
        Stock(part="comb-deep-brood", location="shed", quantity=25),
        Stock(part="frame-deep-foundation", location="shed", quantity=5),
        Stock(part="box-medium-10", location="shed", quantity=50),
    )
    packs = rule_of_thumb(hives(), answers(), problem(stock=store))
    assert packs["deep-flat", 0] == 1  # 2 of 6
    assert packs["framed-d", 0] == 3  # 60 less 25 drawn and 5 framed
    assert ("medium", 0) not in packs


def test_more_colonies_wanted_means_more_hives():
    packs = rule_of_thumb(hives(), answers(target_colonies=12), problem())
    assert packs["floor", 0] == 5


def test_the_usual_feed_is_in_the_rule_too():
    feed = Use(
        code="feed/shed/autumn",
        location="shed",
        first=40,
        last=40,
        units=230.0,
        value=0.0,
        must=True,
        spends={"sugar": 1.0},
    )
    sugar = (*OFFERS, offer("bag", "sugar", 50, 32))
    facts = problem(offers=sugar, scenarios=(Scenario(code="only", probability=1.0, uses=(feed,)),))
    assert rule_of_thumb(hives(), answers(), facts)["bag", 0] == 5  # 230 lb in bags of 50


def test_all_lines_are_cut_alike_to_the_budget_fees_included():
    whole = rule_of_thumb(hives(), answers(), problem())
    cut = cut_alike(problem(budget=600.0), whole)
    assert bill_of(problem(), whole) > 600 >= bill_of(problem(), cut)
    assert 0 < cut["medium", 0] < whole["medium", 0]
    assert abs(cut["medium", 0] - cut["framed-m", 0]) <= 1


def test_a_budget_of_zero_cuts_the_rule_to_nothing():
    assert cut_alike(problem(budget=0.0), {("medium", 0): 10}) == {}


def test_an_offer_of_limited_packs_is_not_overrun():
    few = tuple(replace(each, max_packs=4) if each.code == "medium" else each for each in OFFERS)
    assert rule_of_thumb(hives(), answers(), problem(offers=few))["medium", 0] == 4


def test_a_bill_counts_shipping_until_it_is_free():
    assert bill_of(problem(), {("medium", 0): 10}) == Decimal("270.00")
    assert bill_of(problem(), {("medium", 0): 100}) == Decimal("2200.00")
