"""Bills to the cent. The two readings of a price list with steps are a purchasing textbook's all-units and
incremental discount: Nahmias, Production and Operations Analysis (from memory), chapter 4, bags: 30 cents a bag under
500, 29 under 1,000, 28 from 1,000 on."""

from decimal import Decimal

from planner.plan.pricing import fee_note, priced
from planner.sizing.records import Offer, PriceStep, Supplier


def bags(rule):
    steps = (
        PriceStep(from_packs=1, price=0.30),
        PriceStep(from_packs=500, price=0.29),
        PriceStep(from_packs=1000, price=0.28),
    )
    return Offer(code="bag", supplier="s", parts={"bag": 1}, prices=steps, price_rule=rule)


def test_all_units_prices_every_pack_at_its_step():
    """C(Q): 0.30Q for Q < 500, 0.29Q for 500 <= Q < 1,000, 0.28Q from there on."""
    assert priced(bags("all_units"), 499, "USD").cost == Decimal("149.70")
    assert priced(bags("all_units"), 500, "USD").cost == Decimal("145.00")
    assert priced(bags("all_units"), 1000, "USD").cost == Decimal("280.00")


def test_incremental_prices_each_pack_at_its_own_step():
    """499 at 30 cents, the next 500 at 29, the rest at 28 (a step begins with its first pack)."""
    bill = priced(bags("incremental"), 1200, "USD")
    assert [(each.packs, each.price) for each in bill.bill] == [
        (499, Decimal("0.30")),
        (500, Decimal("0.29")),
        (201, Decimal("0.28")),
    ]
    assert bill.cost == Decimal("350.98")
    assert bill.note == "499 at $0.30, 500 at $0.29 and 201 at $0.28".replace(" and", ",")


def test_the_step_that_was_reached_or_is_next_is_told():
    assert priced(bags("all_units"), 600, "USD").note == "price from 500 packs on"
    assert priced(bags("all_units"), 10, "USD").note == "$0.29 from 500 packs on"


def test_nothing_costs_nothing():
    assert priced(bags("all_units"), 0, "USD").cost == 0
    assert priced(bags("incremental"), 0, "USD").cost == 0


def test_shipping_says_from_where_it_is_free_and_what_is_missing():
    north = Supplier(code="north", order_fee=24.0, free_from=500.0)
    assert fee_note(north, Decimal(176), Decimal(24), "USD") == "free from $500, $324.00 more"
    assert fee_note(north, Decimal(600), Decimal(0), "USD") == "free from $500"
    assert fee_note(Supplier(code="x"), Decimal(6), Decimal(0), "USD") == "no shipping charge"
    assert fee_note(Supplier(code="x", order_fee=9.0), Decimal(6), Decimal(9), "USD") == ""
