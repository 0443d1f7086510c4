"""Reports of any size for comparing: random lines of three invented suppliers, fees beside them."""

from dataclasses import replace
from decimal import Decimal

from hypothesis import strategies as st

from tests.planner import made

SUPPLIERS = ("northfork", "quillon", "tallow")
cents = st.integers(1, 99_999).map(lambda number: Decimal(number) / 100)


@st.composite
def reports(draw):
    """A report whose spend is the sum of its orders."""
    orders = []
    for supplier in draw(st.lists(st.sampled_from(SUPPLIERS), unique=True)):
        codes = draw(st.lists(st.integers(1, 5), unique=True, min_size=1))
        lines = [
            made.make_line(
                number,
                f"{supplier}-{code}",
                f"Piece {code}",
                f"part-{code}",
                draw(st.integers(1, 30)),
                5,
                draw(cents),
            )
            for number, code in enumerate(codes, 1)
        ]
        orders.append(
            made.make_order(supplier, supplier.title(), lines, draw(st.sampled_from(["0", "45.50"])))
        )
    return replace(made.make_report(), orders=tuple(orders), spend=sum((o.total for o in orders), Decimal(0)))
