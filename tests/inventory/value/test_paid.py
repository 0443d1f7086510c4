"""What a receipt cost, piece by piece."""

from hypothesis import given
from hypothesis import strategies as st

from inventory.value import Billed, Delivery, Goods, priced


def goods(key, pieces=1, weight=0, broken=0, part="box"):
    return Goods(key=key, part=part, pieces=pieces, weight=weight, broken=broken)


def test_shipping_is_borne_by_value():
    lines = (Billed(goods=(goods("a"),), cents=3000), Billed(goods=(goods("b"),), cents=1000))
    assert priced(Delivery(lines=lines, shipping_cents=400)) == {"a": 3300, "b": 1100}


def test_a_kit_is_shared_by_what_its_parts_are_worth_or_by_pieces():
    kit = Billed(goods=(goods("box", 1, 300), goods("frames", 10, 100)), cents=200)
    assert priced(Delivery(lines=(kit,))) == {"box": 150, "frames": 50}
    plain = Billed(goods=(goods("box", 1), goods("frames", 9)), cents=200)
    assert priced(Delivery(lines=(plain,))) == {"box": 20, "frames": 180}


def test_free_goods_still_bear_shipping():
    assert priced(
        Delivery(lines=(Billed(goods=(goods("a", 3), goods("b", 1)), cents=0),), shipping_cents=40)
    ) == {
        "a": 30,
        "b": 10,
    }


def test_a_credit_lowers_what_was_thrown_away_first_then_what_is_to_mend_then_the_rest():
    came = (goods("sound", 1), goods("mend", 1, broken=1), goods("scrap", 1, broken=2))
    for credit, left in ((80, [100, 100, 20]), (150, [100, 50, 0]), (250, [50, 0, 0]), (999, [0, 0, 0])):
        line = Billed(goods=came, cents=300, credits=(("box", credit),))
        assert list(priced(Delivery(lines=(line,))).values()) == left


@given(
    st.lists(st.tuples(st.integers(0, 10**6), st.integers(0, 9), st.integers(1, 9)), min_size=1, max_size=6),
    st.integers(0, 10**5),
)
def test_the_cents_add_up_to_the_invoice(lines, shipping):
    told = tuple(
        Billed(goods=(goods(f"{n}a", pieces, weight), goods(f"{n}b", 1, weight)), cents=cents)
        for n, (cents, weight, pieces) in enumerate(lines)
    )
    paid = priced(Delivery(lines=told, shipping_cents=shipping))
    assert sum(paid.values()) == shipping + sum(cents for cents, _, _ in lines)
