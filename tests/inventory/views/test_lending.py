"""Lent and got back by the pages: who has what, due this week, back sound, to mend or not at all."""

import datetime as dt

import pytest
from django.urls import reverse
from django.utils import timezone

from inventory import ledger, stock
from inventory.gear import Condition, Gear
from inventory.ledger import Line
from inventory.models import Loan
from tests import makers
from tests.inventory.views.sending import faults, opened, said, send, text

pytestmark = pytest.mark.django_db
LENT, LEND = reverse("lent"), f"{reverse('act-lend')}?source=shed"
BOXES = {"n__box-deep-10__sound": "3"}


@pytest.fixture
def loan(shed):
    lines, today = [Line("box-deep-10", 3), Line("comb-medium-honey", 20)], timezone.localdate()
    told = {"to": "A. Neighbour", "due_on": today, "day": today - dt.timedelta(days=30)}
    return ledger.lend(source=shed, lines=lines, who=None, key="loan", **told).loan


def back(loan):
    return reverse("act-get-back", args=[loan.pk])


def test_gear_is_lent_to_a_name_until_a_day(client, keeper, shed):
    assert "Nothing of yours is lent out." in text(client.get(LENT))
    until = timezone.localdate() + dt.timedelta(days=30)
    answer = send(client, LEND, to="A. Neighbour", due_on=until.isoformat(), **BOXES)
    assert said(answer)[0].startswith("Lent 3 pieces of Shed to A. Neighbour, due back")
    assert "3 × deep box, 10 frames" in text(client.get(LENT))
    assert "3 out" in text(client.get(LENT))


def test_who_has_it_must_be_told_and_the_day_due_makes_sense(client, keeper, shed):
    assert send(client, LEND, **BOXES).context["form"].errors["to"] == ["This field is required."]
    answer = send(client, LEND, to="A. Neighbour", due_on="2020-01-01", **BOXES)
    assert faults(answer)[0].startswith("Due back on 1 January 2020, but lent on")
    assert not Loan.objects.exists()


def test_held_back_gear_is_not_offered_and_not_lent(client, keeper, shed):
    makers.put(shed, {"box-deep-10": 1}, condition="held back")
    assert "n__box-deep-10__held" not in opened(client, LEND)
    answer = send(client, LEND, to="A. Neighbour", **{"n__box-deep-10__held": "1"})
    assert "is held back and cannot be lent" in faults(answer)[0]


def test_it_comes_back_sound_to_mend_or_not_at_all(client, keeper, shed, loan):
    given = {
        "sound__box-deep-10__sound": "1",
        "to_mend__box-deep-10__sound": "1",
        "lost__box-deep-10__sound": "1",
    }
    answer = send(client, back(loan), **given)
    assert said(answer) == [
        "From A. Neighbour: 2 pieces back in the store of Shed, 1 piece of it to mend, 1 piece given up for lost."
    ]
    assert answer.redirect_chain[0][0] == LENT
    assert stock.on_hand(shed)[Gear(part="box-deep-10")] == 6
    assert stock.on_hand(shed)[Gear(part="box-deep-10", condition=Condition.TO_MEND)] == 1
    assert "20 × medium drawn honey comb" in text(client.get(LENT))


def test_no_more_comes_back_than_is_out_and_nothing_is_refused(client, keeper, shed, loan):
    answer = send(client, back(loan), **{"sound__box-deep-10__sound": "3", "lost__box-deep-10__sound": "1"})
    assert faults(answer)[0].startswith("A. Neighbour has 3 of deep box, 10 frames out")
    assert faults(send(client, back(loan)))[0].startswith("Nothing was given to get back")


def test_a_return_sent_twice_is_booked_once(client, keeper, shed, loan):
    fields = {**opened(client, back(loan)), "sound__box-deep-10__sound": "3"}
    client.post(back(loan), fields)
    again = client.post(back(loan), {**fields}, follow=True)
    assert loan.backs.count() == 1
    assert stock.on_hand(shed)[Gear(part="box-deep-10")] == 8
    assert again.status_code in (200, 422)


def test_what_is_due_stands_on_the_page_of_the_week_until_it_is_back(client, keeper, shed, loan):
    words = text(client.get(reverse("home")))
    assert "Due back" in words and "A. Neighbour" in words
    send(client, back(loan), **{"sound__box-deep-10__sound": "3", "sound__comb-medium-honey__sound": "20"})
    assert "A. Neighbour" not in text(client.get(reverse("home")))
    assert "Nothing of this loan is out any more." in text(client.get(back(loan)))


def test_an_unknown_loan_is_not_found(client, keeper, shed):
    assert client.get(reverse("act-get-back", args=[999])).status_code == 404


def test_a_helper_sees_and_gets_back_only_what_was_lent_from_their_yards(client, loan, shed, yard):
    client.force_login(makers.make_person("sam", role="helper", yards=[yard]))
    assert "Nothing of yours is lent out." in text(client.get(LENT))
    assert "A. Neighbour" not in text(client.get(reverse("home")))
    assert client.get(back(loan)).status_code == 403
    client.force_login(makers.make_person("kim", role="helper", yards=[shed]))
    assert "A. Neighbour" in text(client.get(LENT))
    assert client.get(back(loan)).status_code == 200
