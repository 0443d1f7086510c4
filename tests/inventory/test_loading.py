"""A sheet into the books: tried as it would be posted, posted whole or not at all, the same file once."""

import dataclasses
import datetime as dt
from decimal import Decimal

import pytest
from django.db import connection, transaction
from django.test.utils import CaptureQueriesContext

from apiary.errors import FutureDay, Refused, TagTaken
from apiary.models import Colony, ColonyEvent, FlowWindow, Keeper, Yard
from inventory import loading
from inventory.gear import Condition, Gear
from inventory.ledger import posting as ledger_posting
from inventory.loading import bees, posting
from inventory.loading.bees import mothers_first, start_days, super_pieces
from inventory.models import Act, Holding, Movement, Offer, Part, Supplier
from inventory.orders import OrderItem, cost_of, place_order
from inventory.sheets import ColonyRow, FlowRow, GearRow, OfferRow, YardRow, filled
from inventory.sheets.examples import example
from inventory.stock import on_colony, on_hand
from tests.makers import make_catalogue

DAY = dt.date(2026, 9, 1)
LATER = dt.date(2026, 10, 1)

pytestmark = pytest.mark.django_db


@pytest.fixture(autouse=True)
def catalogue():
    make_catalogue()


def load(sheet=None, *, day=DAY, digest="a"):
    return loading.load(sheet or example(), day=day, who=None, digest=digest * 64)


def changed(**fields):
    return dataclasses.replace(example(), **fields)


def told(loaded, kind):
    return [(change.name, change.becomes, change.detail) for change in loaded.changes if change.kind == kind]


def everything():
    """All rows a sheet may touch, counted."""
    models = (Keeper, Yard, FlowWindow, Colony, ColonyEvent, Supplier, Offer, Act, Movement, Holding)
    return [model.objects.count() for model in models]


def test_all_of_the_sheet_is_posted():
    loaded = load()
    assert loaded.posted and loaded.sentence == "Posted: 13 new."
    assert Keeper.objects.get().name == "Example keeper (invented)"
    mill = Yard.objects.get(code="mill-field")
    assert (mill.stands, mill.miles, mill.visit_every_days) == (16, Decimal("11.5"), 10)
    assert Yard.objects.get(is_shed=True).code == "shed"
    assert [(one.name, one.first_week, one.gain_lb) for one in mill.windows.all()] == [
        ("Clover", 24, 60),
        ("Asters", 35, Decimal("17.5")),
    ]


def test_every_yard_has_a_store_also_one_without_gear():
    load(changed(gear=()))
    assert all(yard.store for yard in Yard.objects.all())


def test_gear_lies_where_the_sheet_says_in_its_condition():
    load()
    assert on_hand(Yard.objects.get(code="shed")) == {
        Gear(part="box-medium-10"): 42,
        Gear(part="box-medium-10", condition=Condition.TO_MEND): 5,
    }


def test_a_colony_stands_in_the_gear_of_its_set_and_its_supers_are_drawn():
    load()
    gear = {key.part: quantity for key, quantity in on_colony(Colony.objects.get(tag="M-01")).items()}
    assert gear == {
        "box-deep-10": 2,
        "comb-deep-brood": 20,
        "floor-10": 1,
        "inner-cover-10": 1,
        "cover-10": 1,
        "box-medium-10": 2,
        "comb-medium-honey": 20,
    }


def test_a_super_is_a_box_and_combs_from_wall_to_wall():
    assert super_pieces("shallow", 8) == {"box-shallow-8": 1, "comb-shallow-honey": 8}


def test_colonies_have_their_mother_set_strength_and_first_day():
    load()
    daughter = Colony.objects.get(tag="M-02")
    assert (daughter.mother.tag, daughter.hive_set.code, daughter.origin) == ("M-01", "one-deep-10", "split")
    assert daughter.started_on == dt.date(2026, 5, 14)
    assert daughter.events.get().kind == ColonyEvent.Kind.STARTED


def test_a_mother_whose_day_is_not_told_began_no_later_than_her_daughter():
    load()
    assert Colony.objects.get(tag="M-01").started_on == dt.date(2026, 5, 14)


def test_days_go_back_through_the_generations():
    def row(tag, mother="", started_on=None):
        return ColonyRow(tag=tag, yard="y", hive_set="s", mother=mother, started_on=started_on)

    rows = [row("c", "b", dt.date(2026, 4, 1)), row("b", "a"), row("a"), row("d")]
    assert [one.tag for one in mothers_first(rows)] == ["a", "d", "b", "c"]
    assert start_days(rows, DAY) == {**dict.fromkeys("abc", dt.date(2026, 4, 1)), "d": DAY}


def test_mothers_in_a_circle_are_a_bug_here():
    rows = [
        ColonyRow(tag="a", yard="y", hive_set="s", mother="b"),
        ColonyRow(tag="b", yard="y", hive_set="s", mother="a"),
    ]
    with pytest.raises(ValueError, match="circle"):
        mothers_first(rows)


def test_prices_are_exact_to_the_cent():
    load()
    offer = Offer.objects.get(code="example-box")
    assert [(step.from_packs, step.price_cents) for step in offer.steps.all()] == [(1, 7000), (10, 6450)]
    assert cost_of(offer, 12) == Decimal("774.00")
    assert {line.part.code: line.units for line in Offer.objects.get(code="example-kit").parts.all()} == {
        "floor-10": 1,
        "cover-10": 1,
    }
    assert (offer.supplier.order_fee_cents, offer.supplier.free_from_cents) == (8000, 200000)


def test_the_same_file_posts_once():
    load()
    before = everything()
    again = load(day=LATER)
    assert (again.posted, again.first_on, everything()) == (False, DAY, before)
    assert again.sentence == "This very file was posted on 2026-09-01: nothing was posted again."
    assert loading.dry_run(example(), day=LATER, digest="a" * 64).first_on == DAY


def test_another_file_with_the_same_content_changes_nothing():
    load()
    before = [row.pk for row in Movement.objects.all()]
    loaded = load(digest="b")
    assert loaded.posted and [row.pk for row in Movement.objects.all()] == before
    assert {change.becomes for change in loaded.changes} == {"as it is"} and loaded.differences == ()
    assert loaded.sentence == "Posted: nothing new."


def test_a_dry_run_tells_exactly_what_posting_does_and_leaves_nothing():
    load(changed(gear=example().gear[:1], colonies=()))
    before = everything()
    tried = loading.dry_run(example(), day=LATER, digest="b" * 64)
    assert everything() == before and not tried.posted
    assert tried.changes == load(digest="b", day=LATER).changes
    assert tried.sentence == "Would post: 3 new and 1 changed."


def test_a_dry_run_into_empty_books_leaves_them_empty():
    before = everything()
    assert loading.dry_run(example(), day=DAY).counts == (
        ("keeper", 1, 0, 0),
        ("yards", 2, 0, 0),
        ("flows", 2, 0, 0),
        ("colonies", 2, 0, 0),
        ("gear", 3, 0, 0),
        ("suppliers", 1, 0, 0),
        ("prices", 2, 0, 0),
    )
    assert everything() == before


@pytest.mark.parametrize("step", ["post_colonies", "post_gear", "post_suppliers", "post_offers", "post"])
def test_nothing_is_half_posted_whatever_breaks_late(step, monkeypatch):
    def fail(*args, **more):
        real(*args, **more)
        raise OSError("the disk is full")

    real = getattr(posting, step)
    before = everything()
    monkeypatch.setattr(posting, step, fail)
    with pytest.raises(OSError, match="full"):
        load()
    assert everything() == before
    monkeypatch.undo()
    assert load().posted


def test_a_store_with_books_is_corrected_to_the_count_told_and_says_so():
    load()
    gear = (
        GearRow(yard="shed", part="box-medium-10", quantity=40),
        GearRow(yard="shed", part="feeder-10", quantity=6),
        GearRow(yard="mill-field", part="frame-medium-foundation", quantity=40),
    )
    loaded = load(changed(gear=gear), digest="b", day=LATER)
    assert told(loaded, "gear") == [
        ("Shed: medium box, 10 frames", "changed", "the book has 42, corrected to the 40 told"),
        ("Shed: top feeder, 10 frames", "changed", "the book has 0, corrected to the 6 told"),
        ("Mill Field (invented): medium frame with foundation", "as it is", ""),
    ]
    assert on_hand(Yard.objects.get(code="shed")) == {
        Gear(part="box-medium-10"): 40,
        Gear(part="box-medium-10", condition=Condition.TO_MEND): 5,
        Gear(part="feeder-10"): 6,
    }
    assert Act.objects.filter(name="correct").count() == 1


def test_a_count_of_nothing_empties_a_store_with_books_and_opens_nothing_in_one_without():
    none = (GearRow(yard="shed", part="feeder-10", quantity=0),)
    load(changed(gear=none, colonies=()))
    assert not Movement.objects.exists()
    load(digest="b")
    gear = (GearRow(yard="shed", part="box-medium-10", quantity=0),)
    load(changed(gear=gear), digest="c")
    assert Gear(part="box-medium-10") not in on_hand(Yard.objects.get(code="shed"))


def test_a_changed_sheet_brings_yards_prices_and_suppliers_up_to_date():
    load()
    shed, mill = example().yards
    box, kit = example().offers
    sheet = changed(
        keeper=dataclasses.replace(example().keeper, truck_lb=1500),
        yards=(shed, dataclasses.replace(mill, stands=20, gate="0815")),
        suppliers=(dataclasses.replace(example().suppliers[0], free_from=None),),
        offers=(dataclasses.replace(box, prices=((1, Decimal("71.25")),)), kit),
    )
    loaded = load(sheet, digest="b")
    assert told(loaded, "yards")[1] == ("Mill Field (invented)", "changed", "stands, gate")
    assert told(loaded, "keeper") == [("Example keeper (invented)", "changed", "truck's load, lb")]
    assert told(loaded, "suppliers")[0][2] == "shipping free from, cents"
    assert told(loaded, "prices") == [
        (
            "Example Joinery (invented): Medium boxes in pieces, 5",
            "changed",
            "price 70.00 / 64.50 from 10 becomes 71.25",
        ),
        ("Example Joinery (invented): Floor and cover", "as it is", ""),
    ]
    assert Yard.objects.get(code="mill-field").stands == 20 and Keeper.objects.get().truck_lb == 1500
    assert Offer.objects.get(code="example-box").steps.get().price_cents == 7125


def test_a_changed_kit_and_rule_are_told():
    load()
    box, kit = example().offers
    kit = dataclasses.replace(kit, parts={"floor-10": 2}, price_rule="incremental")
    loaded = load(changed(offers=(box, kit)), digest="b")
    assert told(loaded, "prices")[1][2] == "price steps, what a pack holds"


def test_an_offer_the_sheet_has_no_more_stays_and_is_told():
    load()
    loaded = load(changed(offers=example().offers[:1]), digest="b")
    assert told(loaded, "prices")[-1] == (
        "Floor and cover",
        "as it is",
        "not in the sheet, stays: give it a day it holds until",
    )


def test_an_offer_that_was_ordered_may_change_its_price():
    load()
    offer = Offer.objects.get(code="example-box")
    order = place_order(offer.supplier, [OrderItem(offer=offer, packs=2)], placed_on=DAY)
    box = dataclasses.replace(example().offers[0], prices=((1, Decimal("99.00")),))
    load(changed(offers=(box,)), digest="b")
    assert order.lines.get().cost_cents == 14000


def test_the_flows_of_a_yard_become_those_of_the_sheet():
    load()
    flows = (FlowRow(yard="mill-field", name="Clover", first_week=23, last_week=29, gain_lb=Decimal(60)),)
    loaded = load(changed(flows=flows), digest="b")
    assert [change[1:] for change in told(loaded, "flows")] == [
        ("changed", "first week"),
        ("changed", "taken out: the sheet has it no more"),
    ]
    load(changed(flows=()), digest="c")
    assert FlowWindow.objects.get().first_week == 23


def test_new_colonies_are_added_and_known_ones_left_with_a_word():
    load()
    first, second = example().colonies
    new = ColonyRow(tag="M-03", yard="mill-field", hive_set="nuc-5", mother="M-01")
    rows = (dataclasses.replace(first, yard="shed", strength="weak"), second, new)
    loaded = load(changed(colonies=rows), digest="b")
    assert told(loaded, "colonies") == [
        (
            "M-01",
            "as it is",
            "by the books it stands in Mill Field (invented), not Shed and is strong, not weak: "
            "left so, book what happened instead",
        ),
        ("M-02", "as it is", ""),
        ("M-03", "new", "Mill Field (invented), nuc, 5 frames"),
    ]
    assert Colony.objects.get(tag="M-01").yard.code == "mill-field"
    assert on_colony(Colony.objects.get(tag="M-03")) == {
        Gear(part="comb-deep-brood"): 5,
        Gear(part="nuc-box-5"): 1,
    }


def test_another_set_of_a_known_colony_is_told_too():
    load()
    first = dataclasses.replace(example().colonies[0], hive_set="one-deep-10")
    loaded = load(changed(colonies=(first,)), digest="b")
    assert "stands in two deeps, 10 frames, not one deep, 10 frames" in told(loaded, "colonies")[0][2]


def test_a_hive_set_no_gear_set_fills_starts_the_colony_without_gear_and_says_so():
    own = Colony._meta.get_field("hive_set").related_model.objects.create(
        code="own", name="own", deep_boxes=1
    )
    row = ColonyRow(tag="X", yard="shed", hive_set=own.code)
    loaded = load(changed(colonies=(row,)))
    assert told(loaded, "colonies")[0][2].endswith("no gear set says what it stands in")
    assert on_colony(Colony.objects.get(tag="X")) == {}


def test_a_silent_sheet_leaves_keeper_and_shed_as_they_are():
    load()
    shed = dataclasses.replace(example().yards[0], is_shed=False)
    load(changed(keeper=None, yards=(shed,)), digest="b")
    assert Keeper.objects.exists() and Yard.objects.get(is_shed=True).code == "shed"


def test_what_the_trade_refuses_is_raised_by_posting_and_told_by_a_dry_run():
    load()
    Colony.objects.filter(tag="M-02").update(ended_on=DAY, ended_why="died")
    rows = (ColonyRow(tag="m-02", yard="mill-field", hive_set="nuc-5"),)
    before = everything()
    with pytest.raises(TagTaken):
        load(changed(colonies=rows), digest="b")
    tried = loading.dry_run(changed(colonies=rows), day=DAY, digest="b" * 64)
    assert "There is a colony M-02 already" in tried.refusals[0] and tried.changes == ()
    assert everything() == before


def test_a_day_still_to_come_is_refused():
    with pytest.raises(FutureDay):
        load(day=dt.date(2999, 1, 1))


def test_a_file_is_read_and_posted_in_one_call():
    content = filled(example(), loading.known_by_books())
    assert loading.load_file(content, day=DAY, who=None).posted
    assert loading.load_file(content, day=DAY, who=None).first_on == DAY


def test_a_faulty_file_is_refused_with_every_fault_and_posts_nothing():
    sheet = changed(yards=(example().yards[1],), gear=(GearRow(yard="shed", part="quilt", quantity=1),))
    before = everything()
    with pytest.raises(Refused) as refusal:
        loading.load_file(filled(sheet), day=DAY, who=None)
    assert "no row is marked as the shed" in str(refusal.value) and "'quilt' is not known" in str(
        refusal.value
    )
    assert len(refusal.value.faults) == refusal.value.count and everything() == before


def test_books_tell_what_they_know():
    load()
    Colony.objects.filter(tag="M-02").update(ended_on=DAY, ended_why="died")
    known = loading.known_by_books()
    assert known.yards == {"shed": "Shed", "mill-field": "Mill Field (invented)"}
    assert (known.shed, known.stands["mill-field"], known.has_keeper) == ("shed", 16, True)
    assert (known.colonies, known.ended) == ({"M-01": "mill-field"}, frozenset({"M-02"}))
    assert known.offers["example-kit"] == ("example", "Floor and cover")
    assert known.super_boxes == {
        (depth, width) for depth in ("deep", "medium", "shallow") for width in (8, 10)
    }
    assert known.units["sugar"] == "lb" and known.sets["nuc-5"].is_nuc


def test_the_books_bring_their_own_catalogue():
    Part.objects.filter(code="jar").delete()
    assert "jar" in loading.known_by_books().parts


def test_a_sheet_read_against_its_own_books_reads_again():
    load()
    content = filled(example(), loading.known_by_books())
    assert loading.read(content, day=DAY).sheet == example()


def test_a_large_sheet_is_posted_with_few_questions_a_colony():
    load()
    rows = tuple(ColonyRow(tag=f"N{number}", yard="mill-field", hive_set="nuc-5") for number in range(40))
    with CaptureQueriesContext(connection) as asked:
        load(changed(colonies=rows), digest="b")
    assert len(asked) < 40 * 12 + 120


def test_the_act_that_keeps_the_digest_says_what_was_posted():
    load()
    act = Act.objects.get(name=posting.ACT)
    assert act.note.startswith("keeper: 1 new, 0 changed; yards: 2 new") and not act.movements.exists()


@pytest.mark.django_db(transaction=True)
def test_books_stay_whole_after_a_load_and_a_count():
    make_catalogue()
    load()
    load(changed(gear=(GearRow(yard="shed", part="box-medium-10", quantity=7),)), digest="b", day=LATER)
    booked = sum(Holding.objects.values_list("quantity", flat=True))
    moved = sum(
        (row.target.is_inside - row.source.is_inside) * row.quantity
        for row in Movement.objects.select_related("source", "target")
    )
    assert booked == moved and not connection.in_atomic_block
    assert (
        transaction.get_autocommit()
        and ledger_posting.BookSeal.objects.get().length == Movement.objects.count()
    )
    assert bees._has_books(Yard.objects.get(code="shed"))


def test_offers_and_yards_of_other_sheets_are_left_alone():
    load()
    ridge = YardRow(code="ridge", name="Ridge", stands=4)
    other = OfferRow(
        code="other", supplier="example", name="Stand", parts={"stand": 1}, prices=((1, Decimal(9)),)
    )
    load(changed(yards=(ridge,), offers=(other,), flows=(), colonies=(), gear=()), digest="b")
    assert Yard.objects.count() == 3 and Offer.objects.count() == 3
