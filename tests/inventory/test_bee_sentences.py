"""An act on bees is told in one sentence, by name."""

import datetime as dt

import pytest

from inventory.bee_sentences import listed
from inventory.ledger import Line
from inventory.models import Sale
from inventory.sentences import head_of, sentence_of
from inventory.yardwork.ending import end_colonies
from inventory.yardwork.lost_yard import lose_yard
from inventory.yardwork.moving import move_colonies
from inventory.yardwork.requeening import requeen
from inventory.yardwork.selling import Terms, got_back, sell
from inventory.yardwork.splitting import Daughters, SplitPlan, hive_nuc, split
from inventory.yardwork.uniting import unite
from tests import makers

pytestmark = pytest.mark.django_db
MAY = dt.date(2025, 5, 10)
TOLD = {"day": MAY, "who": None, "key": "key-1"}


@pytest.fixture
def creek(db):
    return makers.make_yard("creek")


@pytest.fixture
def colony(creek):
    return makers.make_colony("A1", yard=creek, gear=True)


def test_a_split_names_mother_and_daughters(creek, colony):
    makers.put(creek, makers.gear_of("one-deep-10") | {"frame-deep-foundation": 10})
    plan = SplitPlan(hive_set=makers.make_hive_set("one-deep-10"), source=creek)
    act = split(daughters=[Daughters(mother=colony, tags=("A2",))], plan=plan, **TOLD)
    assert head_of(act) == "Split"
    assert sentence_of(act) == ("Split A1: A2 started with 5 combs, 14 pieces from the store of Creek.")


def test_what_was_found_is_told_after_it(colony):
    plan = SplitPlan(hive_set=makers.make_hive_set("nuc-5"), source=makers.make_shed(), refill=False)
    act = split(daughters=[Daughters(mother=colony, tags=("A2",))], plan=plan, **TOLD)
    assert sentence_of(act).endswith("1 piece beyond the book booked as found.")


def test_a_hived_nuc_tells_its_set_and_the_box(creek):
    nuc = makers.make_colony("N1", yard=creek, hive_set="nuc-5", gear=True)
    hive_set = makers.make_hive_set("one-deep-10")
    act = hive_nuc(colony=nuc, hive_set=hive_set, source=creek, into=creek, **TOLD)
    assert sentence_of(act).startswith("N1 hived: one deep, 10 frames; 1 piece back in the store of Creek.")


def test_uniting_tells_where_the_gear_went(creek, colony):
    weak = makers.make_colony("W1", yard=creek, hive_set="one-deep-10", gear=True)
    lines = [Line("box-deep-10", 1), Line("comb-deep-brood", 10)]
    act = unite(colony=weak, into=colony, goes_on=lines, store_at=creek, **TOLD)
    assert sentence_of(act) == ("W1 united with A1, 11 pieces on it, 3 pieces to the store of Creek.")


def test_a_requeening_tells_the_origin(colony):
    act = requeen(colonies=[colony], queen="cell", **TOLD)
    assert sentence_of(act) == "A1: a queen cell given."


def test_an_end_tells_what_became_of_them(colony):
    act = end_colonies(colonies=[colony], why="died", note="mice", **TOLD)
    assert sentence_of(act) == "A1 written down as found dead."


def test_a_sale_tells_what_comes_back_and_no_price(creek):
    nuc = makers.make_colony("N1", yard=creek, hive_set="nuc-5", gear=True)
    terms = Terms(
        buyer="Invented Neighbour",
        price_cents=18000,
        owed=(Line("nuc-box-5", 1),),
        back_by=dt.date(2025, 6, 7),
    )
    act = sell(colonies=[nuc], terms=terms, goes=None, stays_at=creek, **TOLD)
    assert sentence_of(act) == ("Sold N1 to Invented Neighbour with 6 pieces; 1 to come back by 7 June 2025.")
    back = {"sale": Sale.objects.get(), "into": creek, "day": MAY, "who": None}
    act = got_back(lines=[Line("nuc-box-5", 1)], key="b", **back)
    assert sentence_of(act) == ("Invented Neighbour brought 1 piece back, into the store of Creek.")


def test_a_sale_settled_with_nothing_is_told(creek):
    nuc = makers.make_colony("N1", yard=creek, hive_set="nuc-5")
    terms = Terms(buyer="Invented Neighbour", deposit_cents=100)
    sell(colonies=[nuc], terms=terms, goes=None, stays_at=creek, **TOLD)
    act = got_back(sale=Sale.objects.get(), into=creek, lines=[], settles=True, day=MAY, who=None, key="b")
    assert sentence_of(act) == "Invented Neighbour brings nothing more: settled."


def test_a_move_names_the_yard(colony):
    act = move_colonies(colonies=[colony], yard=makers.make_yard("hill"), **TOLD)
    assert sentence_of(act) == "Moved A1 to Hill, with their gear on them."


def test_a_lost_yard_tells_what_is_gone_and_what_was_saved(creek, colony):
    hill = makers.make_yard("hill")
    saved = [Line("box-deep-10", 1)]
    act = lose_yard(yard=creek, colonies=[colony], cause="flood", into=hill, saved=saved, **TOLD)
    assert sentence_of(act) == (
        "A1 written down as lost, 24 pieces gone, 1 piece saved into the store of Hill."
    )


def test_a_lost_store_alone_is_told(creek):
    makers.put(creek, {"stand": 2})
    act = lose_yard(yard=creek, colonies=[], cause="theft", into=makers.make_shed(), store_too=True, **TOLD)
    assert sentence_of(act) == "A store written down as lost, 2 pieces gone."


def test_many_colonies_are_counted():
    assert listed(["A1"]) == "A1"
    assert listed(["A1", "A2", "A3"]) == "A1, A2 and A3"
    assert listed([str(number) for number in range(9)]) == "9 colonies"
