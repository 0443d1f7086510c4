"""What each buyer still brings back, the first due first; undone acts do not count."""

import datetime as dt

import pytest

from inventory.ledger import Line
from inventory.models import Sale
from inventory.sales import (
    all_sales,
    came_back,
    deposit_left,
    is_settled,
    returned_since,
    still_owed,
    waiting_sales,
)
from inventory.yardwork import undo
from inventory.yardwork.selling import Terms, got_back, sell
from tests import makers

pytestmark = pytest.mark.django_db
MAY = dt.date(2025, 5, 10)


def sold(tag, *, due, owed=(("nuc-box-5", 1),), deposit_cents=0, yard=None):
    colony = makers.make_colony(tag, yard=yard, hive_set="nuc-5", gear=True)
    told = Terms(
        buyer=f"Invented {tag}",
        deposit_cents=deposit_cents,
        owed=tuple(Line(code, number) for code, number in owed),
        back_by=due,
    )
    return sell(
        colonies=[colony], terms=told, goes=None, stays_at=colony.yard, day=MAY, who=None, key=f"sell-{tag}"
    )


def brought(tag, lines, **fields):
    told = {"lines": lines, "day": MAY, "who": None, "key": f"back-{tag}", **fields}
    return got_back(sale=Sale.objects.get(buyer=f"Invented {tag}"), into=makers.make_shed(), **told)


def test_the_first_due_stands_first_with_what_is_still_to_come():
    sold("late", due=MAY + dt.timedelta(days=30))
    sold("soon", due=MAY + dt.timedelta(days=7), owed=(("nuc-box-5", 1), ("comb-deep-brood", 5)))
    sold("done", due=MAY)
    brought("done", [Line("nuc-box-5", 1)])
    brought("soon", [Line("comb-deep-brood", 2)])
    rows = waiting_sales()
    assert [(row.sale.buyer, row.tags, row.pieces) for row in rows] == [
        ("Invented soon", "soon", 4),
        ("Invented late", "late", 1),
    ]
    assert rows[0].pieces_words == f"1 × {makers.part('nuc-box-5')}, 3 × {makers.part('comb-deep-brood')}"


def test_a_deposit_not_given_back_is_waited_for_too():
    sold("box", due=MAY, deposit_cents=3000)
    brought("box", [Line("nuc-box-5", 1)], refund_cents=1000)
    (row,) = waiting_sales()
    assert (row.deposit_left_cents, row.pieces_words) == (2000, "nothing more")
    brought("box", [], settles=True, key="settled")
    assert waiting_sales() == []
    assert is_settled(row.sale)
    assert deposit_left(row.sale) == 2000


def test_only_sales_from_the_yards_asked_for():
    creek, hill = makers.make_yard("creek"), makers.make_yard("hill")
    sold("one", due=MAY, yard=creek)
    sold("two", due=MAY, yard=hill)
    assert [row.tags for row in waiting_sales(within={hill.pk})] == ["two"]


def test_undone_sales_and_returns_do_not_count():
    act = sold("box", due=MAY)
    back = brought("box", [Line("nuc-box-5", 1)])
    sale = Sale.objects.get()
    assert returned_since(act).sale == sale
    undo(back, who=None, key="undo")
    assert returned_since(act) is None
    assert came_back([sale]) == {}
    assert sum(still_owed(sale).values()) == 1
    undo(act, who=None, key="undo-2")
    assert waiting_sales() == []


def test_the_questions_do_not_grow_with_the_sales(django_assert_num_queries):
    for number in range(4):
        sold(f"n{number}", due=MAY)
    with django_assert_num_queries(6):
        waiting_sales()


def test_the_list_of_all_has_settled_sales_too_and_none_that_was_undone():
    first = sold("box", due=MAY, deposit_cents=3000)
    sold("swap", due=MAY + dt.timedelta(days=7), owed=())
    undo(sold("slip", due=MAY), who=None, key="undone")
    swap, box = all_sales()
    assert (swap.sale.buyer, swap.tags, swap.is_open, swap.still_words) == (
        "Invented swap",
        "swap",
        False,
        "",
    )
    assert (box.act, box.is_open, box.deposit_left_cents) == (first, True, 3000)
    assert box.still_words == f"1 × {makers.part('nuc-box-5')}"
    brought("box", [Line("nuc-box-5", 1)], refund_cents=3000)
    assert [row.is_open for row in all_sales()] == [False, False]
