"""A sheet into the books: tried as it would be posted, posted whole or not at all, the same file once."""

import datetime as dt
from decimal import Decimal

import pytest
from django.db import connection, transaction
from django.test.utils import CaptureQueriesContext

from apiary.errors import FutureDay, TagTaken
from apiary.models import Colony, Keeper, Yard
from inventory import loading
from inventory.ledger import posting as ledger_posting
from inventory.loading import bees, posting
from inventory.models import Act, Holding, Movement
from inventory.sheets import ColonyRow, GearRow
from inventory.sheets.examples import example
from tests.inventory.loading.made import DAY, LATER, changed, everything, load
from tests.inventory.sheets.workbooks import altered
from tests.makers import make_catalogue

pytestmark = pytest.mark.django_db


def test_all_of_the_sheet_is_posted():
    loaded = load()
    assert loaded.posted and loaded.sentence == "Posted: 15 new."
    assert Keeper.objects.get().name == "Example keeper (invented)"
    mill = Yard.objects.get(code="mill-field")
    assert (mill.stands, mill.miles, mill.visit_every_days) == (16, Decimal("11.5"), 10)
    assert Yard.objects.get(is_shed=True).code == "shed"
    assert [(one.name, one.first_week, one.gain_lb) for one in mill.windows.all()] == [
        ("Clover", 24, 60),
        ("Asters", 35, Decimal("17.5")),
    ]


def test_the_same_file_posts_once():
    load()
    before = everything()
    again = load(day=LATER)
    assert (again.posted, again.first_on, everything()) == (False, DAY, before)
    assert again.sentence == "This very file was posted on 2026-09-01: nothing was posted again."
    assert loading.dry_run(example(), day=LATER, digest="a" * 64).first_on == DAY


def test_a_dry_run_tells_exactly_what_posting_does_and_leaves_nothing():
    load(changed(gear=example().gear[:1], colonies=()))
    before = everything()
    tried = loading.dry_run(example(), day=LATER, digest="b" * 64)
    assert everything() == before and not tried.posted
    assert tried.changes == load(digest="b", day=LATER).changes
    assert tried.sentence == "Would post: 3 new and 1 changed."


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


def test_what_was_shown_is_what_is_posted_or_nothing():
    shown = loading.dry_run(example(), day=DAY).mark
    load(changed(gear=(), offers=()), digest="b")
    with pytest.raises(loading.BooksMoved):
        loading.load(example(), day=DAY, who=None, digest="a" * 64, shown=shown)
    now = loading.dry_run(example(), day=DAY)
    assert loading.load(example(), day=DAY, who=None, digest="a" * 64, shown=now.mark).mark == now.mark


def test_every_change_names_its_row():
    content = altered({})
    loaded = load(loading.read(content, day=DAY).sheet)
    assert {change.where for change in loaded.changes if change.kind in ("yards", "gear")} == {
        *("Yards row 2", "Yards row 3", "Gear row 2", "Gear row 3", "Gear row 4"),
    }
