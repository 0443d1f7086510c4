"""The Season pages: what they show, what they refuse, and that each act is done once and by POST."""

import datetime as dt
import re

import pytest
from django.urls import reverse

from inventory.models import PriceStep
from planner import queue
from planner.models import Run, Season
from tests import makers
from tests.planner import made, outfit
from tests.planner.pages import page, text


@pytest.mark.parametrize(
    "name", ["run", "run-progress", "run-order", "run-workbook", "run-approve", "season-answers"]
)
def test_a_stranger_is_sent_to_the_door(client, db, name):
    run = made.make_done_run()
    pk = run.season_id if name == "season-answers" else run.pk
    assert page(client, name, pk).url.startswith(reverse("sign-in"))


@pytest.mark.parametrize("name", ["season-run", "run-cancel"])
def test_acts_are_done_by_post_only(keeper, name):
    assert page(keeper, name, made.make_run().pk).status_code == 405


def test_no_page_has_an_inline_style_or_script(keeper):
    run = made.make_done_run()
    working = made.make_run(run.season, status=Run.Status.WORKING, stage="drawing the seasons")
    pages = [("season",), ("season-answers", run.season_id), ("run", working.pk)]
    pages += [("run-order", run.pk), ("run-approve", run.pk)]
    for name, *args in pages:
        html = page(keeper, name, *args).content.decode()
        assert " style=" not in html, name
        assert not re.search(r"<script(?![^>]* src=)", html), name


def test_a_season_is_begun_and_its_answers_come_next(keeper):
    typed = {"name": "Winter order 2027", "starts_on": "2027-01-15", "budget": "4500"}
    response = keeper.post(reverse("season"), typed)
    season = Season.objects.get()
    assert response.url == reverse("season-answers", args=[season.pk])
    assert (season.budget_cents, season.starts_on) == (450_000, dt.date(2027, 1, 15))


def test_seasons_are_listed_with_the_way_to_their_last_run(keeper):
    run = made.make_done_run()
    assert "Open the order" in text(page(keeper, "season"))
    assert reverse("run", args=[run.pk]) in page(keeper, "season").content.decode()


def test_answers_are_kept_with_name_day_and_budget(keeper):
    outfit.make_prices()
    season = made.make_season()
    typed = {"name": "Winter order 2028", "starts_on": "2028-01-15", "budget": "", "circuit_days": "10"}
    response = keeper.post(reverse("season-answers", args=[season.pk]), typed)
    assert response.status_code == 302
    season.refresh_from_db()
    assert (season.name, season.budget, season.answers) == ("Winter order 2028", None, {"circuit_days": 10})


def test_a_fault_is_shown_at_its_field_and_nothing_is_kept(keeper):
    season = made.make_season()
    typed = {"name": "Winter order 2028", "starts_on": "2028-01-15", "circuit_days": "1000"}
    response = keeper.post(reverse("season-answers", args=[season.pk]), typed)
    assert response.status_code == 422
    html = response.content.decode()
    assert 'id="id_circuit_days_error"' in html
    assert re.search(r'<input[^>]*name="circuit_days"[^>]*aria-invalid="true"', html)
    assert "1 answer will not do" in text(response)
    season.refresh_from_db()
    assert (season.name, season.answers) == ("Winter order 2027", {})


def test_each_question_shows_its_usual_value_and_source(keeper):
    shown = text(page(keeper, "season-answers", made.make_season().pk))
    assert "Usual: 70 %; from 0 to 100" in shown
    assert "Source: Steinhauer et al. (2014)" in shown


def test_the_usual_order_is_kept_and_goes_with_the_next_run(keeper):
    season = book_outfit()
    response = keeper.post(
        reverse("season-usual", args=[season.pk]), {"packs-mill-floor-10": "4"}, follow=True
    )
    assert "Your usual order is kept" in text(response)
    keeper.post(reverse("season-run", args=[season.pk]), {"scenarios": "7", "seed": "3", "seconds": "60"})
    run = Run.objects.get()
    assert (run.usual_order, run.trial, run.bad_years_curve) == ({"mill-floor-10": 4}, 300, False)


def test_a_fault_in_the_usual_order_is_shown_at_its_field(keeper):
    season = book_outfit()
    response = keeper.post(reverse("season-usual", args=[season.pk]), {"packs-mill-floor-10": "-4"})
    assert response.status_code == 422
    assert 'id="id_packs-mill-floor-10_error"' in response.content.decode()
    season.refresh_from_db()
    assert season.usual_order == {}


def test_how_long_it_is_tried_and_the_curve_can_be_chosen(keeper):
    season = book_outfit()
    typed = {"scenarios": "7", "seed": "3", "seconds": "60", "trial": "1000", "bad_years_curve": "on"}
    keeper.post(reverse("season-run", args=[season.pk]), typed)
    run = Run.objects.get()
    assert (run.trial, run.bad_years_curve) == (1000, True)


def test_a_run_is_put_in_the_queue(keeper):
    outfit_season = book_outfit()
    typed = {"scenarios": "7", "seed": "3", "seconds": "60"}
    response = keeper.post(reverse("season-run", args=[outfit_season.pk]), typed)
    run = Run.objects.get()
    assert response.url == reverse("run", args=[run.pk])
    assert (run.scenarios, run.seed, run.seconds, run.asked_by.username) == (7, 3, 60, "robin")


def book_outfit():
    makers.Keeper.objects.all().delete()
    outfit.make_outfit()
    return outfit.make_season()


def test_a_run_without_colonies_is_refused_with_what_to_do(keeper):
    makers.make_shed()
    season = made.make_season()
    typed = {"scenarios": "7", "seed": "3", "seconds": "60"}
    response = keeper.post(reverse("season-run", args=[season.pk]), typed, follow=True)
    assert "enter your yards and colonies first" in text(response)
    assert not Run.objects.exists()


def test_a_look_beyond_its_bounds_is_refused_at_its_field(keeper):
    season = made.make_season()
    response = keeper.post(
        reverse("season-run", args=[season.pk]), {"scenarios": "0", "seed": "1", "seconds": "60"}
    )
    assert response.status_code == 422
    assert "greater than or equal to 1" in text(response)


def test_a_working_run_shows_its_stage_bound_gap_and_the_way_to_stop_it(keeper):
    run = made.make_run(
        status=Run.Status.WORKING,
        stage="looking for the best order",
        started_at=made.timezone.now(),
        bound=6530.2,
        gap_reached=0.013,
    )
    response = page(keeper, "run", run.pk)
    shown = text(response)
    for words in ("Now looking for the best order", "$6,530 a season", "1.3 %", "Stop the run", "Look again"):
        assert words in shown
    assert f'hx-get="{reverse("run-progress", args=[run.pk])}"' in response.content.decode()


def test_a_run_tells_its_seconds_and_what_the_search_may_take(keeper):
    began = made.timezone.now() - dt.timedelta(seconds=125)
    run = made.make_run(status=Run.Status.WORKING, stage="choosing packs", started_at=began, seconds=240)
    shown = text(page(keeper, "run", run.pk))
    assert "2 min 5 s" in shown or "2 min 6 s" in shown
    assert "240 s at the most" in shown


def test_a_run_taken_up_again_says_so_while_it_works_and_once_it_is_done(keeper):
    told = queue.BROKE_OFF.format(stage="choosing packs")
    run = made.make_run(status=Run.Status.WORKING, stage="drawing the seasons", attempts=2, message=told)
    shown = text(page(keeper, "run", run.pk))
    assert "The planner broke off while choosing packs. The run is taken up again, from the start." in shown
    assert "2 of 3" in shown
    done = made.make_done_run(run.season, attempts=2)
    assert "2 times" in text(page(keeper, "run-order", done.pk))


def test_a_worker_not_heard_of_for_long_is_told_with_the_moment_its_run_is_taken_up(keeper):
    now = made.timezone.now()
    run = made.make_run(
        status=Run.Status.WORKING, leased_until=now + dt.timedelta(seconds=queue.LEASE_SECONDS)
    )
    assert "Nothing was heard" not in text(page(keeper, "run", run.pk))
    Run.objects.update(leased_until=now + dt.timedelta(seconds=queue.LEASE_SECONDS - 40))
    shown = text(page(keeper, "run", run.pk))
    assert "Nothing was heard of it for 4" in shown and "taken up again from the start after" in shown


def test_a_waiting_run_says_how_many_are_ahead(keeper):
    first = made.make_run()
    second = made.make_run(first.season)
    assert "Waits for 1 other run." in text(page(keeper, "run", second.pk))


def test_the_changing_part_alone_is_sent_to_a_page_that_polls(keeper):
    run = made.make_run(status=Run.Status.WORKING, stage="drawing the seasons")
    response = page(keeper, "run-progress", run.pk, headers={"HX-Request": "true"})
    assert "<html" not in response.content.decode()
    assert "Now drawing the seasons" in text(response)
    assert "HX-Redirect" not in response.headers


def test_a_page_that_polls_is_led_on_once_the_run_is_over(keeper):
    run = made.make_done_run()
    response = page(keeper, "run-progress", run.pk, headers={"HX-Request": "true"})
    assert response.headers["HX-Redirect"] == reverse("run", args=[run.pk])


def test_without_scripts_the_progress_is_the_runs_page(keeper):
    run = made.make_run()
    assert page(keeper, "run-progress", run.pk).url == reverse("run", args=[run.pk])


def test_a_run_is_stopped(keeper):
    run = made.make_run()
    response = keeper.post(reverse("run-cancel", args=[run.pk]), follow=True)
    assert "Stopped before it was done" in text(response)
    assert "Back to the answers" in text(response)


def test_stopping_what_is_over_is_refused(keeper):
    run = made.make_done_run()
    response = keeper.post(reverse("run-cancel", args=[run.pk]), follow=True)
    assert "there is nothing to stop" in text(response)


def test_a_failed_run_says_what_happened(keeper):
    run = made.make_run(status=Run.Status.FAILED, message="No supplier's price holds.")
    assert "No supplier&#x27;s price holds." in page(keeper, "run", run.pk).content.decode()


def test_prices_of_nothing_are_refused_on_the_page(keeper):
    outfit.make_outfit()
    PriceStep.objects.update(price_cents=0)
    season = outfit.make_season()
    given = {"scenarios": "4", "seed": "1", "seconds": "60"}
    response = keeper.post(reverse("season-run", args=[season.pk]), given, follow=True)
    assert "A price of 0 stands on the price list for" in text(response)
    assert not Run.objects.exists()


def test_a_run_that_is_not_there_is_not_found(keeper):
    assert page(keeper, "run", 999).status_code == 404


def test_the_admin_shows_runs_and_changes_nothing(client, db):
    admin = makers.make_person("admin", is_staff=True, is_superuser=True)
    client.force_login(admin)
    run = made.make_run()
    assert client.get(reverse("admin:planner_run_changelist")).status_code == 200
    assert client.get(reverse("admin:planner_run_change", args=[run.pk])).status_code == 200
    assert client.post(reverse("admin:planner_run_delete", args=[run.pk])).status_code == 403
    assert client.get(reverse("admin:planner_season_add")).status_code == 403
