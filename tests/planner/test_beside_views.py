"""Pages of planning again and of what-ifs: what they show and what they refuse."""

import datetime as dt

import pytest
from django.urls import reverse
from django.utils import timezone

from planner.models import Run
from tests import makers
from tests.planner import made, outfit
from tests.planner.pages import page, text


@pytest.fixture
def keeper(client, db):
    outfit.make_outfit()
    client.force_login(makers.make_person())
    return client


@pytest.fixture
def done(keeper):
    return made.make_done_run(outfit.make_season(starts_on=timezone.localdate() - dt.timedelta(days=60)))


def post(keeper, name, *args, **typed):
    return keeper.post(reverse(name, args=args), typed, follow=True)


def test_a_season_under_way_is_planned_again_with_today_s_books(keeper, done):
    assert "Plan again from today" in text(page(keeper, "season-answers", done.season_id))
    today = timezone.localdate()
    post(keeper, "season-again", done.season_id, day=today.isoformat())
    run = Run.objects.first()
    assert (run.day, run.begun, run.status) == (today, done.season.starts_on, Run.Status.WAITING)


def test_a_season_that_begins_today_is_not_planned_again(keeper):
    season = outfit.make_season(starts_on=timezone.localdate())
    assert "Plan again from today" not in text(page(keeper, "season-answers", season.pk))


@pytest.mark.parametrize(
    ("days", "said"), [(-1, "begins, on"), (61, "is still to come, and nobody knows its books")]
)
def test_a_day_before_the_season_or_to_come_is_refused(keeper, done, days, said):
    day = done.season.starts_on + dt.timedelta(days=days)
    assert said in text(post(keeper, "season-again", done.season_id, day=day.isoformat()))
    assert Run.objects.count() == 1


def test_a_day_after_the_season_is_refused_with_what_to_do(keeper):
    season = outfit.make_season(starts_on=timezone.localdate() - dt.timedelta(weeks=60))
    told = text(post(keeper, "season-again", season.pk, day=timezone.localdate().isoformat()))
    assert "begin a new season to plan the year ahead" in told


def test_no_day_is_told_as_a_fault(keeper, done):
    assert "The day: " in text(post(keeper, "season-again", done.season_id, day="soon"))


def test_a_what_if_is_asked_and_marked_on_its_pages(keeper, done):
    Run.objects.filter(pk=done.pk).update(day=done.season.starts_on, begun=done.season.starts_on)
    assert "Suppose something else" in text(page(keeper, "run-what-if", done.pk))
    post(keeper, "run-what-if", done.pk, prices_of="all", percent="10", target="20")
    asked = Run.objects.first()
    assert (asked.parent, asked.answers) == (done, {"target_colonies": 20})
    Run.objects.filter(pk=asked.pk).update(status=Run.Status.DONE, report=done.report)
    told = text(page(keeper, "run-order", asked.pk))
    assert "A what-if beside run" in told and "all prices 10 % up" in told
    assert "Approve the order" not in told
    assert f"Since run {done.pk}" in told and "Nothing changed since" in told
    assert "nothing is ordered on what is only supposed" in text(
        keeper.get(reverse("run-approve", args=[asked.pk]), follow=True)
    )
    assert "Taken over" in text(post(keeper, "run-take-over", asked.pk))
    done.season.refresh_from_db()
    assert done.season.answers == {"target_colonies": 20}


def test_a_what_if_without_a_change_or_of_a_run_not_done_is_refused(keeper, done):
    answer = post(keeper, "run-what-if", done.pk)
    assert answer.status_code == 422 and "Nothing is changed against run" in text(answer)
    waiting = made.make_run(done.season)
    assert "only a run that is done" in text(
        keeper.get(reverse("run-what-if", args=[waiting.pk]), follow=True)
    )


def test_nothing_but_prices_cannot_be_taken_over(keeper, done):
    what_if = made.make_run(
        done.season, status=Run.Status.DONE, report=done.report, parent=done, what_if={"prices": {"all": 5}}
    )
    assert "They are no answers of the season" in text(post(keeper, "run-take-over", what_if.pk))


def test_runs_stand_side_by_side_two_to_four(keeper, done):
    others = [made.make_run(done.season, status=Run.Status.DONE, report=done.report) for _ in range(4)]
    two = keeper.get(reverse("runs-beside"), {"run": [done.pk, others[0].pk]})
    assert "Expected worth" in text(two) and "All of them buy the same" in text(two)
    assert b"<caption>" in two.content and b'scope="row"' in two.content
    many = keeper.get(reverse("runs-beside"), {"run": [done.pk, *(run.pk for run in others)]}, follow=True)
    assert "5 runs do not fit side by side" in text(many)
    assert "0 runs do not fit" in text(keeper.get(reverse("runs-beside"), {"run": ["x"]}, follow=True))


def test_the_beliefs_of_a_done_run_are_checked_by_a_button_once(keeper, done):
    assert "Check the beliefs" in text(page(keeper, "run-order", done.pk))
    assert keeper.get(reverse("run-beliefs", args=[done.pk])).status_code == 405
    told = text(post(keeper, "run-beliefs", done.pk))
    asked = Run.objects.first()
    assert asked.only_checks and asked.parent == done
    assert "Checking the beliefs" in told and f"the beliefs of run {done.pk}" in told
    assert "just now: wait until it is done" in text(post(keeper, "run-beliefs", done.pk))
    order = page(keeper, "run-order", done.pk)
    assert "See how far the check is" in text(order)
    assert f"Run {asked.pk}," not in text(page(keeper, "season-answers", done.season_id))
    Run.objects.filter(pk=asked.pk).update(status=Run.Status.DONE)
    assert page(keeper, "run", asked.pk).url == reverse("run-order", args=[done.pk]) + "#beliefs"


def test_a_check_that_failed_says_so_and_leads_back_to_the_order(keeper, done):
    failed = made.make_run(done.season, parent=done, status=Run.Status.FAILED, message="The books moved.")
    told = page(keeper, "run", failed.pk)
    assert "The beliefs were not checked" in text(told) and "The books moved." in text(told)
    assert reverse("run-order", args=[done.pk]) in told.content.decode()


def test_the_beliefs_of_a_run_not_done_are_not_checked(keeper, done):
    waiting = made.make_run(done.season)
    assert "only a run that is done has an order" in text(post(keeper, "run-beliefs", waiting.pk))
