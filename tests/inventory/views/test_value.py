"""The books in money through their pages: opening and in less out is closing, on each of them."""

import datetime as dt
from decimal import Decimal

import pytest
from django.urls import reverse

from inventory import ledger
from inventory.ledger import Line
from inventory.models import ToldPrice, ToldRest, ValueBasis
from inventory.yardwork.selling import Terms, sell
from tests import makers
from tests.inventory.views.sending import said, text

pytestmark = pytest.mark.django_db
DAY = makers.DAY
YEAR = "?first=2025-01-01&last=2025-12-31"


@pytest.fixture(autouse=True)
def signed_in(keeper):
    return keeper


@pytest.fixture
def stock(shed):
    """8 deep boxes of ten frames at 26.00, 3 of eight at 25.00, 40 combs at 6.00, 50 lb of sugar at 0.72."""
    told = {"who": None, "day": DAY + dt.timedelta(days=9)}
    ledger.scrap(at=shed, lines=[Line("box-deep-10", 2)], key="scrap", **told)
    ledger.use(at=shed, lines=[Line("sugar", 20)], key="use", **told)
    return shed


def page(client, name, query=""):
    answer = client.get(reverse(name) + query)
    assert answer.status_code == 200
    return answer


def test_value_is_told_by_part_on_any_evening(client, stock):
    words = text(page(client, "books-value", "?day=2025-04-01"))
    assert "559.00" in words and "208.00" in words and "1 Apr 2025" in words
    words = text(page(client, "books-value"))
    assert "492.60" in words and "156.00" in words  # less 52.00 and 14.40


def test_an_empty_evening_says_so(client, stock):
    assert "The book has no gear on that evening." in text(page(client, "books-value", "?day=2001-01-01"))


def test_a_day_that_is_none_keeps_today_and_is_told(client, stock):
    answer = page(client, "books-value", "?day=someday")
    assert "day" in answer.context["form"].errors
    assert "492.60" in text(answer)


def test_a_year_opens_with_what_the_year_before_closed_with(client, stock):
    answer = page(client, "books-year", YEAR)
    whole = answer.context["sheet"].whole
    assert (whole.opening.value, whole.closing.value) == (Decimal(0), Decimal("492.60"))
    assert whole.opening.cents + whole.all_in.cents - whole.all_out.cents == whole.closing.cents
    assert whole.opening.pieces + whole.all_in.pieces - whole.all_out.pieces == whole.closing.pieces
    words = text(answer)
    assert "In: opening stock 101 559.00" in words
    assert "Out: scrapped 2 52.00" in words and "Out: used up 20 14.40" in words
    following = page(client, "books-year", "?first=2026-01-01&last=2026-12-31").context["sheet"].whole
    assert following.opening == whole.closing == following.closing


def test_a_stretch_that_ends_before_it_begins_is_refused(client, stock):
    answer = page(client, "books-year", "?first=2025-12-31&last=2025-01-01")
    assert "The stretch ends before it begins" in text(answer)


def test_a_delivery_without_invoice_is_told(client, stock):
    ledger.receive(order=makers.make_order(), into=stock, day=DAY, who=None, key="came")
    assert "1 delivery has no invoice yet, its planned price stands in." in text(
        page(client, "books-year", YEAR)
    )


def test_write_offs_stand_by_reason_with_what_was_used_and_sold(client, stock, colony):
    told = {"day": DAY + dt.timedelta(days=20), "who": None}
    terms = Terms(buyer="an invented neighbour", price_cents=25000, deposit_cents=3000)
    sell(colonies=[colony], terms=terms, goes=[Line("floor-10", 1)], stays_at=stock, key="sold", **told)
    ledger.correct(location=stock, counted=[Line("comb-medium-honey", 39)], key="less", **told)
    words = text(page(client, "books-write-offs", YEAR))
    assert "Scrapped" in words and "52.00" in words
    assert "Counted less" in words and "6.00" in words
    assert "Used up, an expense" in words and "14.40" in words
    assert "Sold, at cost" in words and "18.00" in words
    assert "Taken for 1 sale, deposits with it and less what was given back: 280.00" in words
    assert "Written off 58.00" in words and "ask your accountant" in words


def test_a_year_without_write_offs_says_so(client, stock):
    answer = page(client, "books-write-offs", "?first=2024-01-01&last=2024-12-31")
    assert "Nothing was written off in these days." in text(answer)


def test_depreciation_by_part_and_year_it_came(client, stock):
    """By hand: 6 boxes of 26.00 over 20 years 7.80, 3 of 25.00 3.75, combs 240.00 over 15 16.00; the 2 scrapped in
    their first year never wore: 52.00 is written off."""
    answer = page(client, "books-depreciation", "?year=2025")
    assert answer.context["sheet"].whole.this_year == Decimal("27.55")
    words = text(answer)
    assert (
        "Depreciation of the year: 27.55" in words and "52.00 of that gear was not depreciated yet" in words
    )
    assert "ask your accountant" in words
    monthly = page(client, "books-depreciation", "?year=2025&convention=monthly").context["sheet"]
    assert monthly.whole.this_year == Decimal("20.66")  # nine months of twelve: 5.85, 2.81, 12.00


def test_a_year_before_the_books_has_no_gear(client, stock):
    assert "No gear that wears is in the books by that year." in text(
        page(client, "books-depreciation", "?year=2001")
    )


def test_prices_of_opening_stock_are_told_and_taken_back(client, stock):
    address = reverse("books-basis")
    answer = client.post(address, {"part": "box-deep-10", "price": "10.00"}, follow=True)
    assert said(answer) == ["What deep box, 10 frames cost is noted."]
    assert "396.60" in text(page(client, "books-value"))  # 6 × 16.00 less
    client.post(address, {"part": "box-deep-10", "price": ""})
    assert not ToldPrice.objects.exists()


@pytest.mark.parametrize("price", ["-1", "9,5", "1.005", "x"])
def test_a_price_that_is_none_is_refused(client, stock, price):
    answer = client.post(reverse("books-basis"), {"part": "box-deep-10", "price": price})
    assert answer.status_code == 422 and not ToldPrice.objects.exists()


def test_a_part_that_is_not_in_the_catalogue_has_no_price(client, stock):
    assert client.post(reverse("books-basis"), {"part": "no-such", "price": "1"}).status_code == 422


def test_own_work_and_the_convention_are_told(client, stock):
    client.post(reverse("books-basis"), {"work": "18.50", "convention": "monthly"})
    told = ValueBasis.objects.get()
    assert (told.work_cents_per_hour, told.convention) == (1850, "monthly")
    client.post(reverse("books-basis"), {"work": "", "convention": "full year"})
    assert ValueBasis.objects.get().work_cents_per_hour == 0
    assert client.post(reverse("books-basis"), {"convention": "never"}).status_code == 422


def test_rest_values_are_told_for_all_gear_and_for_a_part(client, stock):
    """By hand, the sums of the year by part and 10 %: 7.80, 3.75 and 16.00 less a tenth; boxes of 26.00 down to 6.00:
    6 × 20.00 over 20 years is 6.00."""
    assert "no rest value" in text(page(client, "books-depreciation", "?year=2025"))
    client.post(reverse("books-basis"), {"convention": "full year", "rest_percent": "10"})
    sheet = page(client, "books-depreciation", "?year=2025").context["sheet"]
    assert sheet.whole.this_year == Decimal("24.80")  # 7.02, 3.38 and 14.40
    answer = client.post(reverse("books-basis"), {"worn": "box-deep-10", "rest": "6.00"}, follow=True)
    assert said(answer) == ["The rest value of deep box, 10 frames is noted."]
    assert "6.00 a piece" in text(answer)
    answer = page(client, "books-depreciation", "?year=2025")
    assert answer.context["sheet"].whole.this_year == Decimal("23.78")
    assert "down to 10 % of cost; of 1 part down to the rest value told" in text(answer)
    client.post(reverse("books-basis"), {"worn": "box-deep-10", "rest": ""})
    assert not ToldRest.objects.exists()


@pytest.mark.parametrize(
    "told",
    [
        {"convention": "monthly", "rest_percent": "101"},
        {"convention": "monthly", "rest_percent": "-1"},
        {"worn": "box-deep-10", "rest": "-2"},
        {"worn": "no-such", "rest": "2"},
    ],
)
def test_a_rest_that_is_none_is_refused(client, stock, told):
    assert client.post(reverse("books-basis"), told).status_code == 422
    assert not ToldRest.objects.exists() and not ValueBasis.objects.exists()


def test_the_books_lead_to_the_sheets_in_money(client, stock):
    words = text(page(client, "books"))
    assert "Write-offs" in words and "Depreciation" in words
