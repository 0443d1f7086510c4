"""The pages of an order: lines with reasons, drawings, its files, and that it is approved once."""

import io
import re
import zipfile
from dataclasses import replace
from decimal import Decimal

import openpyxl
from django.urls import reverse

from inventory.models import Order
from tests.planner import made
from tests.planner.pages import page, text


def test_the_trial_stands_on_the_order_page_in_words_a_drawing_and_a_table(keeper):
    response = page(keeper, "run-order", made.make_done_run().pk)
    shown, html = text(response), response.content.decode()
    assert "Trial against your usual order" in shown
    assert "this order earns about $1,200 a season more than yours" in shown
    assert 'aria-labelledby="trial-title trial-desc"' in html
    assert made.make_trial().by_yard.said in html
    assert "Worked out, never asked" in html and "How far summers swing" in html
    assert html.count("a year of life off") == 1 and "Deep box" in html and "$12.38" in html
    assert "On 300 fresh seasons, in $ a season" in shown
    assert "Looking to bad years alone lifts the worst tenth" in shown


def test_an_order_without_a_trial_shows_none(keeper):
    report = made.make_report(trial=None, bad_years=None)
    shown = text(page(keeper, "run-order", made.make_done_run(report=report).pk))
    assert "fresh seasons" not in shown and "Bad years" not in shown


def test_a_done_run_leads_to_its_order_and_an_unfinished_order_to_its_run(keeper):
    done = made.make_done_run()
    waiting = made.make_run(done.season)
    assert page(keeper, "run", done.pk).url == reverse("run-order", args=[done.pk])
    assert page(keeper, "run-order", waiting.pk).url == reverse("run", args=[waiting.pk])


def test_the_order_shows_lines_by_supplier_sums_budget_and_cautions(keeper):
    shown = text(page(keeper, "run-order", made.make_done_run().pk))
    for words in (
        "Northfork Woodware (invented)",
        "12 of 5 60 14.20 852.00",
        "Sum, shipping 95.00",
        "1,637.00",
        "$4,500, of it $1,309 unspent",
        "5 lines, 2 suppliers",
        "the rule of thumb",
        "Caution: lifting",
        "68 missing in an ordinary year",
    ):
        assert words in shown


def test_an_order_found_as_time_ran_out_says_so_with_how_far_it_may_be_off(keeper):
    said = "Time ran out: this is the best order found so far; a better one could be worth up to 3.4 % more."
    report = made.make_report(
        standing=replace(made.make_standing(Decimal("4074.00")), status="time_limit", said=said)
    )
    shown = text(page(keeper, "run-order", made.make_done_run(report=report, gap_reached=0.034).pk))
    assert said in shown and "Proven within 3.4 %" in shown


def test_each_reason_opens_in_place_and_each_drawing_is_described(keeper):
    html = page(keeper, "run-order", made.make_done_run().pk).content.decode()
    assert html.count('class="opener"><details><summary>') == 5
    drawings = re.findall(r"<svg class=\"drawing.*?</desc>", html, re.DOTALL)
    assert len(drawings) == 7
    assert all("<title" in drawing and "<desc" in drawing for drawing in drawings)
    ids = re.findall(r' id="([^"]+)"', html)
    assert len(ids) == len(set(ids))


def test_the_order_tells_what_other_budgets_would_do_and_what_to_drop(keeper):
    response = page(keeper, "run-order", made.make_done_run().pk)
    shown = text(response)
    assert "The next $100 would earn $41 a season" in shown and "budget $4,500" in shown
    assert "Medium box, flat : drop 4 packs of 12" in shown
    assert "One pack of 5 fewer saves $71 and loses $113, so keep it" in shown
    assert len(response.content) < 200_000


def test_an_order_stored_before_budgets_were_asked_still_opens(keeper):
    run = made.make_done_run()
    del run.report["budgets"], run.report["beliefs"]
    for order in run.report["orders"]:
        for line in order["lines"]:
            del line["why"]["moves"], line["why"]["otherwise"]
    run.save()
    shown = text(page(keeper, "run-order", run.pk))
    assert "Medium box, flat" in shown and "Budget curve" not in shown
    assert page(keeper, "run-workbook", run.pk).status_code == 200


def test_an_order_of_nothing_says_so_and_offers_no_approval(keeper):
    report = made.make_report(orders=(), spend=made.Decimal(0))
    shown = text(page(keeper, "run-order", made.make_done_run(report=report).pk))
    assert "Nothing is worth its money this time" in shown
    assert "Approve the order" not in shown


def test_the_workbook_is_a_workbook_named_after_the_season(keeper):
    run = made.make_done_run()
    response = page(keeper, "run-workbook", run.pk)
    assert f"winter-order-winter-order-2027-{run.pk}.xlsx" in response.headers["Content-Disposition"]
    assert "Order" in openpyxl.load_workbook(io.BytesIO(response.content)).sheetnames


def test_a_run_that_is_not_done_has_no_workbook(keeper):
    response = page(keeper, "run-workbook", made.make_run().pk, follow=True)
    assert "only a run that is done has an order" in text(response)


def test_approving_is_asked_once_more_and_looking_orders_nothing(keeper):
    run = made.make_done_run()
    shown = text(page(keeper, "run-approve", run.pk))
    assert "Approve 2 orders" in shown
    assert "Nothing is sent from here" in shown
    assert not Order.objects.exists()


def test_approving_makes_the_orders_and_says_which(keeper):
    run = made.make_done_run()
    response = keeper.post(reverse("run-approve", args=[run.pk]))
    assert response.url == reverse("run-order", args=[run.pk])
    assert Order.objects.count() == 2
    run.refresh_from_db()
    assert run.approved_by.username == "robin"
    shown = text(page(keeper, "run-order", run.pk))
    assert re.search(r"Approved \d+ \w+ \d{4} by robin", shown)
    assert "Ordered: Northfork Woodware (invented)" in shown
    assert "Approve the order" not in shown


def test_the_orders_of_an_approved_run_come_in_one_file(keeper):
    run = made.make_done_run()
    assert "has no purchase orders to send" in text(page(keeper, "run-orders", run.pk, follow=True))
    keeper.post(reverse("run-approve", args=[run.pk]))
    assert reverse("run-orders", args=[run.pk]) in page(keeper, "run-order", run.pk).content.decode()
    answer = page(keeper, "run-orders", run.pk)
    assert answer["Content-Disposition"] == f'attachment; filename="orders-{run.pk}.zip"'
    with zipfile.ZipFile(io.BytesIO(answer.content)) as file:
        books = [openpyxl.load_workbook(file.open(name)) for name in file.namelist()]
    assert [book.active["C5"].value for book in books] == [
        "Northfork Woodware (invented)",
        "Sandridge Supply (invented)",
    ]


def test_approving_twice_orders_once_and_says_so(keeper):
    run = made.make_done_run()
    address = reverse("run-approve", args=[run.pk])
    keeper.post(address)
    response = keeper.post(address, follow=True)
    assert "Nothing was ordered a second time" in text(response)
    assert Order.objects.count() == 2
    assert "Nothing was ordered a second time" in text(page(keeper, "run-approve", run.pk, follow=True))
