"""The report as the order page shows it."""

import dataclasses
from decimal import Decimal

from planner.order_rows import order_page
from planner.plan.records import PartUnits
from tests.planner import made


def test_the_budget_says_what_is_left_of_it():
    report = made.make_report(spend=Decimal("4074.00"))
    assert order_page(report).budget_said == "$4,500, of it $426 unspent"


def test_cents_are_shown_where_there_are_any():
    report = made.make_report(spend=Decimal("4074.50"))
    page = order_page(report)
    assert (page.budget_said, page.spend_said) == ("$4,500, of it $425.50 unspent", "$4,074.50")


def test_without_a_budget_it_says_so():
    assert order_page(made.make_report(budget=None)).budget_said == "no limit set"


def test_lines_and_suppliers_are_counted_in_words():
    page = order_page(made.make_report())
    assert (page.count_said, page.orders_said) == ("5 lines, 2 suppliers", "2 orders")


def test_packs_units_and_price_of_each_piece():
    row = order_page(made.make_report()).tables[0].rows[0]
    assert (row.packs, row.units, row.each) == ("12 of 5", "60", Decimal("14.20"))


def test_a_pack_of_one_is_a_bare_number():
    line = made.make_line(1, "nf-feeder", "Top feeder", "feeder-10", 3, 1, "21.00")
    report = made.make_report(orders=(made.make_order("nf", "Northfork (invented)", [line], "0"),))
    assert order_page(report).tables[0].rows[0].packs == "3"


def test_a_kit_lists_what_it_brings_and_prices_the_kit():
    line = made.make_line(1, "nf-kit", "Hive kit", "box-deep-10", 4, 2, "180.00")
    frames = PartUnits(part="frame-deep", name="deep frame", unit="piece", units=80)
    kit = dataclasses.replace(line, parts=(*line.parts, frames))
    report = made.make_report(orders=(made.make_order("nf", "Northfork (invented)", [kit], "0"),))
    row = order_page(report).tables[0].rows[0]
    assert (row.packs, row.units, row.each) == ("4", "", Decimal("180.00"))
    assert row.brings == "8 hive kit, 80 deep frame"


def test_the_sentence_above_the_ruler_says_what_the_ruler_shows():
    need = order_page(made.make_report()).tables[0].rows[0].need
    assert need.short == "68 missing in an ordinary year"
    assert need.said == (
        "Owned: 198 sound in store, 6 on order or coming back from deadouts, 14 to mend. "
        "The season asks for 272, mostly 258 to 291."
    )


def test_gear_on_colonies_beyond_their_sets_counts_as_owned():
    owned = (
        made.Owned(part="box-medium-10", name="medium box", sound=50, on_colonies=90, spare_on_colonies=20),
    )
    peak = made.make_peak(returned=0)
    line = made.make_line(1, "nf-m", "Medium", "box-medium-10", 1, 10, "99.00", peak=peak, owned=owned)
    report = made.make_report(orders=(made.make_order("nf", "Northfork (invented)", [line], "0"),))
    need = order_page(report).tables[0].rows[0].need
    assert need.said.startswith("Owned: 50 sound in store, 20 to spare on colonies.")
    assert need.short == "202 missing in an ordinary year"


def test_what_is_left_out_and_bought_later_is_summed_a_season():
    page = order_page(made.make_report())
    assert (page.left_out_said, page.later_said) == ("about $64 a season", "about $120 a season")


def test_a_need_that_is_covered_is_called_enough():
    peak = made.make_peak(mean=50, low=40, high=60)
    owned = (made.Owned(part="excluder-10", name="excluder", sound=70),)
    line = made.make_line(1, "nf-ex", "Excluder", "excluder-10", 1, 10, "99.00", peak=peak, owned=owned)
    report = made.make_report(orders=(made.make_order("nf", "Northfork (invented)", [line], "0"),))
    assert order_page(report).tables[0].rows[0].need.short == "enough in an ordinary year"


def test_a_line_without_a_peak_has_no_ruler():
    assert order_page(made.make_report()).tables[1].rows[0].need is None


def test_money_without_a_sign_of_its_own_is_named_by_its_code():
    assert order_page(made.make_report(money="SEK")).money == "SEK"


def test_an_order_of_nothing_has_no_tables():
    page = order_page(made.make_report(orders=(), spend=Decimal(0), budget=Decimal(0)))
    assert (page.tables, page.budget_line) == ((), None)
