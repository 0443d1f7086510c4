"""The keeper's usual order: every offer listed, whole packs kept, what is no longer offered still shown."""

import pytest

from planner.usual_form import UsualOrderForm
from tests.planner import made, outfit


@pytest.fixture
def season(db):
    outfit.make_outfit()
    return outfit.make_season()


def sent(season, **packs):
    form = UsualOrderForm(season, {f"packs-{code}": value for code, value in packs.items()})
    if form.is_valid():
        form.save()
        season.refresh_from_db()
    return form


def test_every_offer_is_listed_under_its_supplier_with_its_price(season):
    groups = list(UsualOrderForm(season).groups())
    assert [group.name for group in groups] == [
        "Mill Lane Woodware (invented)",
        "Beeline Supply (invented)",
    ] or [group.name for group in groups] == ["Beeline Supply (invented)", "Mill Lane Woodware (invented)"]
    fields = [field for group in groups for field in group.fields]
    assert len(fields) == 16
    floor = next(field for field in fields if field.name == "packs-mill-floor-10")
    assert (floor.label, floor.help_text) == ("floor-10, 1 a pack", "$17.00 a pack")


def test_packs_are_kept_by_offer_and_nothing_and_zero_are_not(season):
    form = sent(season, **{"mill-floor-10": "4", "bees-sugar": "0", "mill-cover-10": ""})
    assert form.errors == {}
    assert season.usual_order == {"mill-floor-10": 4}
    assert UsualOrderForm(season).told == "1 line"
    assert UsualOrderForm(season)["packs-mill-floor-10"].value() == 4


@pytest.mark.parametrize("typed", ["-1", "2.5", "many", "20000"])
def test_what_is_no_count_of_packs_is_refused_at_its_field_and_nothing_kept(season, typed):
    form = sent(season, **{"mill-floor-10": typed, "bees-sugar": "3"})
    assert set(form.errors) == {"packs-mill-floor-10"}
    season.refresh_from_db()
    assert season.usual_order == {}


def test_an_offer_gone_from_the_lists_keeps_its_line_until_it_is_emptied(season):
    season.usual_order = {"old-boxes": 3}
    season.save()
    last = list(UsualOrderForm(season).groups())[-1]
    assert (last.name, last.fields[0].name) == ("No longer offered", "packs-old-boxes")
    sent(season)
    assert season.usual_order == {}


def test_empty_it_says_that_it_was_not_told(season):
    assert UsualOrderForm(season).told == "not told"


def test_without_books_there_is_nothing_to_list(db):
    assert list(UsualOrderForm(made.make_season()).groups()) == []
