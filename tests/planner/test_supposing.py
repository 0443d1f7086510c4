"""What-ifs on the same books: prices, a supplier left out, hives of mediums."""

from decimal import Decimal

import pytest

from planner.errors import UnknownSupplier
from planner.projection.homes import home_set
from planner.supposing import medium_home, suppose, words_of
from tests.planner.operations import operation


def prices(whole, supplier):
    return [price for offer in whole.offers if offer.supplier == supplier for _packs, price in offer.prices]


def test_nothing_supposed_is_the_same_operation():
    whole = operation()
    assert suppose(whole, {}) is whole
    assert suppose(whole, {"budget": "100", "answers": {"circuit_days": 7}}) is whole


def test_prices_go_up_to_the_cent_for_one_supplier_or_all():
    whole = operation()
    dearer = suppose(whole, {"prices": {"oakham": 10}})
    assert prices(dearer, "oakham")[0] == Decimal("79.75")  # 72.50 and a tenth
    assert prices(dearer, "thimble") == prices(whole, "thimble")
    cheaper = suppose(whole, {"prices": {"all": -50, "oakham": 10}})
    assert prices(cheaper, "oakham") == prices(dearer, "oakham")
    assert all(
        now < before for now, before in zip(prices(cheaper, "larder"), prices(whole, "larder"), strict=True)
    )


def test_a_supplier_left_out_offers_nothing():
    assert prices(suppose(operation(), {"without": ["oakham"]}), "oakham") == []


@pytest.mark.parametrize("what_if", [{"without": ["nobody"]}, {"prices": {"nobody": 5}}])
def test_an_unknown_supplier_is_refused_with_those_there_are(what_if):
    with pytest.raises(
        UnknownSupplier, match=r"No supplier is called 'nobody'\. The suppliers are: larder, oakham"
    ):
        suppose(operation(), what_if)


def test_new_hives_of_mediums_stand_in_the_set_of_mediums_of_their_width():
    whole = operation()
    home = medium_home(whole)
    assert (home.code, home.width) == ("three-mediums-10", 10)
    assert home_set(suppose(whole, {"home": home.code}), "alder") == home
    assert (
        medium_home(operation(sets=tuple(facts for facts in whole.sets if "medium" not in facts.boxes)))
        is None
    )


def test_a_supposition_is_told_in_words():
    what_if = {
        "budget": "3000.00",
        "answers": {"survival_share": 0.55, "target_colonies": 80, "circuit_days": 7},
        "prices": {"all": 10, "mill": -5},
        "without": ["bees"],
        "home": "three-mediums-10",
        "names": {"mill": "Mill Lane", "bees": "Beeline"},
    }
    assert words_of(what_if) == (
        "budget $3,000, How often do you get round each yard: 7, 55 of 100 come through, 80 colonies in autumn, "
        "all prices 10 % up, prices of Mill Lane 5 % down, without Beeline, new hives in mediums alone"
    )
    assert words_of({"budget": None}) == "no budget limit" and words_of({}) == ""
