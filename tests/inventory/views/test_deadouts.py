"""Working a deadout by its pages: close and look, the pieces, care, the record, the season's losses."""

import datetime as dt

import pytest
from django.urls import reverse

from apiary import colonies
from apiary.models import Colony
from inventory.gear import Condition
from inventory.models import Deadout, MothCare, Movement
from tests import makers
from tests.inventory.deadouts.conftest import HIVE, at, hive_of, work
from tests.inventory.views.sending import faults, said, send, text

pytestmark = pytest.mark.django_db
PAGE = reverse("act-deadout")
COMB, BOX = "comb-deep-brood__sound", "box-deep-10__sound"


@pytest.fixture(autouse=True)
def signed_in(keeper):
    return keeper


@pytest.fixture
def hive(yard):
    return hive_of("F-07", yard)


def address(hive, *, cause="starved", looked="yes", suspected="no", closed="on", day="2025-06-01"):
    return f"{PAGE}?colony={hive.pk}&day={day}&cause={cause}&looked={looked}&suspected={suspected}&closed={closed}"


def test_first_the_hive_is_closed_and_looked_at(client, shed, hive):
    page = client.get(f"{PAGE}?colony={hive.pk}")
    assert page.status_code == 200
    words = text(page)
    assert words.index("close the hive first") < words.index("What killed it")
    assert "Book deadout" not in words


@pytest.mark.parametrize("left_out", ["closed", "cause", "looked", "suspected"])
def test_each_question_must_be_answered(client, shed, hive, left_out):
    page = client.get(address(hive, **{left_out: ""}))
    assert page.status_code == 422
    assert page.context["form"].errors[left_out]


def test_booked_beside_found_it_is_taken_apart_and_the_colony_ends(client, shed, hive):
    answer = send(
        client,
        address(hive),
        **{"becomes__floor-10__sound": "to_mend", f"n__{BOX}": "1", f"scrapped__{COMB}": "4"},
    )
    row = Deadout.objects.get()
    assert answer.redirect_chain == [(reverse("deadout", args=[row.pk]), 302)]
    assert said(answer)[0] == "Worked deadout F-07: 19 pieces saved, 0 held back, 5 scrapped, burnt or lost."
    assert at(shed)["box-deep-10"] == 9  # eight were there
    assert at(shed)["comb-deep-brood"] == 12
    assert at(shed, Condition.TO_MEND) == {"floor-10": 1}
    gone = Movement.objects.filter(act=row.act, target__kind__in=["scrap", "lost"])
    assert sorted(gone.values_list("part__code", "target__kind", "quantity")) == [
        ("box-deep-10", "lost", 1),
        ("comb-deep-brood", "scrap", 4),
    ]
    hive.refresh_from_db()
    assert hive.ended_why == Colony.Ended.DIED


def test_rows_that_agree_are_folded_and_one_that_does_not_is_open(client, shed, hive):
    page = client.get(address(hive))
    folds = [piece.is_open for _head, pieces in page.context["form"].groups for piece in pieces]
    assert not any(folds)
    answer = client.post(address(hive), {f"n__{BOX}": "1"})
    opened = [
        piece.row.part.code
        for _head, pieces in answer.context["form"].groups
        for piece in pieces
        if piece.is_open and piece.row.part.code.startswith("box")
    ]
    assert opened == ["box-deep-10"]
    assert "1 of 2 found, 1 missing" in text(answer)


def test_where_nobody_looked_at_the_brood_every_comb_is_held(client, shed, hive):
    send(client, address(hive, looked="no"), **{f"becomes__{BOX}": "sound"})
    assert at(shed, Condition.HELD) == {"comb-deep-brood": 16}


def test_a_comb_sent_to_the_store_all_the_same_is_refused(client, shed, hive):
    answer = send(client, address(hive, looked="no"), **{f"becomes__{COMB}": "sound"})
    assert answer.status_code == 422
    assert not Deadout.objects.exists()


def test_a_suspicion_shows_what_it_reaches_before_it_is_booked_and_holds_it(client, shed, yard, hive):
    hive_of("F-08", yard)
    page = client.get(address(hive, suspected="yes"))
    words = text(page)
    assert "Held back with it" in words and "F-08 stood in Fern Hollow with F-07" in words
    answer = send(client, address(hive, suspected="yes"))
    assert "24 pieces elsewhere held back with it." in said(answer)[0]
    assert "call the bee inspector" in text(answer).lower()
    assert at(shed, Condition.HELD) == HIVE


def test_more_elsewhere_than_were_there_is_refused(client, shed, hive):
    answer = send(client, address(hive), **{f"scrapped__{BOX}": "3"})
    words = ["2 were there, but 3 are sent elsewhere: count them once more."]
    assert answer.context["form"].errors[f"n__{BOX}"] == words


def test_what_stood_there_beyond_the_book_needs_no_asking(client, shed, hive):
    answer = send(client, address(hive), **{f"n__{BOX}": "3"})
    assert "Worked deadout F-07: 25 pieces saved" in said(answer)[0]


def test_a_deadout_twice_leads_to_the_first(client, shed, hive):
    row = work(hive, shed)
    answer = client.get(f"{PAGE}?colony={hive.pk}", follow=True)
    assert answer.redirect_chain == [(reverse("deadout", args=[row.pk]), 302)]
    assert "worked as a deadout already" in said(answer)[0]


def test_a_second_form_sent_for_the_same_hive_is_refused(client, shed, hive):
    page = client.get(address(hive))
    form = page.context["form"]
    values = {name: form[name].value() for name in form.fields if form[name].value() is not None}
    work(hive, shed)
    answer = client.post(address(hive), values)
    assert answer.status_code == 422
    assert "worked as a deadout already" in faults(answer)[0]


def test_a_colony_that_was_lost_is_salvaged_instead(client, shed, hive):
    colonies.end(hive, why="lost", day=dt.date(2025, 6, 1), who=None)
    assert client.get(f"{PAGE}?colony={hive.pk}").url == f"{reverse('act-salvage')}?colony={hive.pk}"


def test_living_colonies_and_dead_ones_with_gear_are_offered(client, shed, yard, hive):
    makers.make_dead_colony(tag="F-02", yard=yard, gear=True)
    makers.make_dead_colony(tag="F-03", yard=yard)
    words = text(client.get(f"{PAGE}?yard=fern-hollow"))
    assert "F-07" in words and "F-02" in words and "F-03" not in words


def test_the_page_of_all_deadouts_tells_what_waits(client, shed, yard, hive):
    makers.make_dead_colony(tag="F-02", yard=yard, gear=True)
    work(hive, shed, fate="sound")
    words = text(client.get(reverse("deadouts")))
    assert "F-02" in words and "Combs to freeze" in words and "Inspector to call" not in words


def test_this_week_tells_of_combs_until_they_were_frozen(client, shed, hive):
    row = work(hive, shed, fate="sound")
    assert "Combs to freeze" in text(client.get(reverse("home")))
    send(client, reverse("deadout-care", args=[row.pk]), degrees="0", unit="F", hours="26")
    care = MothCare.objects.get()
    assert (care.tenths_celsius, care.minutes) == (-177, 26 * 60)  # −17.8 °C, told no colder than it was
    assert "Combs to freeze" not in text(client.get(reverse("home")))


@pytest.mark.parametrize(
    ("degrees", "unit", "hours", "words"),
    [("-5", "C", "24", "too warm to rely on"), ("5", "F", "1", "too short"), ("", "C", "3", "mend what")],
)
def test_care_too_warm_too_short_or_untold_is_refused(client, shed, hive, degrees, unit, hours, words):
    row = work(hive, shed, fate="sound")
    answer = send(client, reverse("deadout-care", args=[row.pk]), degrees=degrees, unit=unit, hours=hours)
    assert answer.status_code == 422 and words in text(answer)


def test_the_freeze_times_stand_on_the_page(client, shed, hive):
    row = work(hive, shed, fate="sound")
    words = text(client.get(reverse("deadout-care", args=[row.pk])))
    assert "-15 °C, 5 °F 2 " in words and "-7 °C, 19.4 °F 4.5" in words and "never foulbrood" in words


def test_value_is_shown_to_the_keeper_alone(client, shed, yard, hive):
    row = work(hive, shed, fate="sound")
    assert "At the average of what was paid: saved $" in text(client.get(reverse("deadout", args=[row.pk])))
    assert "What became of its pieces" in text(client.get(reverse("deadout", args=[row.pk])))
    client.force_login(makers.make_person("hand", role="helper", yards=[yard]))
    words = text(client.get(reverse("deadout", args=[row.pk])))
    assert "Worked" not in words and "$" not in words


def test_a_helper_of_another_yard_does_not_see_it(client, shed, hive):
    row = work(hive, shed)
    client.force_login(makers.make_person("hand", role="helper", yards=[makers.make_yard("long-acre")]))
    assert client.get(reverse("deadout", args=[row.pk])).status_code == 403


def test_the_season_report_tells_total_and_average_apart(client, shed, yard, hive):
    work(hive, shed, fate="sound")
    hive_of("L-01", makers.make_yard("long-acre"))
    words = text(client.get(reverse("deadout-report"), {"since": "2025-05-01", "until": "2025-07-01"}))
    assert "Total loss 50.0 %: 1 of 2 colonies at risk. Average loss of the yards 50.0 %." in words
    assert "Unknown 1 50.0" in words


def test_a_span_the_wrong_way_round_is_refused(client):
    answer = client.get(reverse("deadout-report"), {"since": "2025-07-01", "until": "2025-05-01"})
    assert answer.status_code == 422 and "The first evening comes before the second" in text(answer)
