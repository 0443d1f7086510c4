"""Counts through their pages: begun, entered, the differences seen, then posted; nothing is in the books before."""

import datetime as dt

import pytest
from django.urls import reverse
from django.utils import timezone

from apiary.models import Keeper
from apiary.rights import HELPER
from inventory import counting, ledger, stock
from inventory.gear import Condition, Gear
from inventory.ledger import Line
from inventory.models import Act, Count
from tests import makers
from tests.inventory.views.sending import faults, opened, said, send, text

pytestmark = pytest.mark.django_db
CORRECT, COUNTS = reverse("act-correct"), reverse("counts")


@pytest.fixture(autouse=True)
def signed_in(keeper):
    return keeper


def begin(client, query="yard=shed", **fields):
    """A draft begun on its page; the address at which it is entered."""
    answer = send(client, f"{CORRECT}?{query}", follow=False, **fields)
    assert answer.status_code == 302, text(answer)
    return answer.url


def newest():
    return Count.objects.latest("pk")


def post(client, count=None, **fields):
    """Posts the count as its page shows it."""
    address = reverse("count", args=[(count or newest()).pk])
    shown = client.get(address).context["shown"]
    return client.post(address, {"shown": shown, **fields}, follow=True)


def test_a_count_is_begun_entered_compared_and_posted(client, shed):
    enter = begin(client)
    assert opened(client, enter)["n__box-deep-10__sound"] == 8
    page = send(client, enter, **{"n__box-deep-10__sound": "12", "n__comb-medium-honey__sound": "37"})
    told = text(page)
    assert "Deep box, 10 frames 8 12 4 more" in told and "Medium drawn honey comb 40 37 3 missing" in told
    assert "Correct 2 kinds in the book" in told and "2 agree" in told
    assert stock.on_hand(shed)[Gear(part="box-deep-10")] == 8
    answer = post(client)
    assert said(answer) == ["Counted Shed: 4 pieces more, 3 pieces missing."]
    assert stock.on_hand(shed)[Gear(part="box-deep-10")] == 12
    assert stock.on_hand(shed)[Gear(part="comb-medium-honey")] == 37
    assert "the act in the books" in text(answer)


def test_blind_the_book_is_hidden_until_the_numbers_are_entered(client, shed):
    enter = begin(client, blind="yes")
    page = client.get(enter)
    html = page.content.decode()
    assert 'data-booked="8"' not in html and 'class="booked"' not in html and "by the book" not in html
    assert [value for name, value in opened(client, enter).items() if name.startswith("n__")] == []
    assert 'name="n__box-deep-10__sound" value=""' in html
    told = text(send(client, enter, **{"n__box-deep-10__sound": "7"}))
    assert "Deep box, 10 frames 8 7 1 missing" in told


def test_a_row_that_was_not_touched_is_no_zero(client, shed):
    send(client, begin(client, blind="yes"), **{"n__box-deep-10__sound": "7"})
    post(client)
    there = stock.on_hand(shed)
    assert there[Gear(part="box-deep-10")] == 7
    assert there[Gear(part="comb-medium-honey")] == 40


def test_an_emptied_number_was_not_counted_and_zero_was(client, shed):
    send(client, begin(client), **{"n__box-deep-10__sound": "", "n__box-deep-8__sound": "0"})
    post(client)
    there = stock.on_hand(shed)
    assert there[Gear(part="box-deep-10")] == 8
    assert Gear(part="box-deep-8") not in there


def test_what_is_entered_is_kept_row_by_row_and_stays_when_the_page_is_left(client, shed):
    enter = begin(client, blind="yes")
    kept = client.post(enter, {"n__box-deep-10__sound": "7"}, headers={"X-Requested-With": "kept"})
    assert kept.status_code == 204
    client.post(enter, {"n__sugar__sound": "45"}, headers={"X-Requested-With": "kept"})
    values = opened(client, enter)
    assert (values["n__box-deep-10__sound"], values["n__sugar__sound"]) == (7, 45)
    answer = send(client, enter, keep="draft", **{"n__box-deep-8__sound": "3"})
    assert said(answer)[0].startswith("Kept as a draft.")
    assert newest().lines.count() == 3
    assert "Count on" in text(client.get(COUNTS))


def test_what_the_book_does_not_know_is_added(client, shed):
    enter = begin(client)
    page = send(client, enter, add="row", also="cover-10", also_condition="to_mend")
    assert "n__cover-10__to_mend" in page.context["form"].fields
    send(client, enter, **{"n__cover-10__to_mend": "2"})
    post(client)
    assert stock.on_hand(shed)[Gear(part="cover-10", condition=Condition.TO_MEND)] == 2


def test_a_part_that_is_in_no_catalogue_is_refused_by_name(client, shed):
    enter = begin(client)
    answer = send(client, enter, **{"n__no-such-part__sound": "4"})
    assert answer.status_code == 422
    assert faults(answer) == [
        "'no-such-part' is not in the catalogue: choose a part that is, or add it first."
    ]
    assert newest().lines.count() == 0


def test_what_is_no_number_is_refused_and_nothing_is_lost(client, shed):
    enter = begin(client)
    answer = send(client, enter, **{"n__box-deep-10__sound": "-3", "n__box-deep-8__sound": "2"})
    assert answer.status_code == 422
    assert 'name="n__box-deep-8__sound" value="2"' in answer.content.decode()


def test_a_yard_is_counted_with_the_boxes_of_its_colonies(client, shed, yard, colony):
    makers.put(yard, {"box-deep-10": 2})
    enter = begin(client, "yard=fern-hollow", with_colonies="on")
    place = colony.place.pk
    assert opened(client, enter)[f"n{place}__box-deep-10__sound"] == 2
    page = send(client, enter, **{f"n{place}__box-deep-10__sound": "1"})
    told = text(page)
    assert "on F-01 2 1 1 missing" in told and "on F-01, goes with its box 20 10 10 missing" in told
    post(client)
    assert stock.on_hand(colony)[Gear(part="box-deep-10")] == 1


def test_a_colony_is_counted_too_and_only_what_fits_is_found_on_it(client, shed, colony):
    enter = begin(client, f"colony={colony.pk}")
    send(client, enter, add="row", also="box-deep-8", also_condition="sound")
    send(client, enter, **{"n__box-deep-8__sound": "1"})
    answer = post(client)
    assert answer.status_code == 422
    assert "deep box, 8 frames does not fit colony F-01" in text(answer)
    assert newest().status == Count.Status.DRAFT


def test_a_past_evening_is_counted_against_the_book_of_that_evening(client, moved):
    assert opened(client, begin(client, "yard=shed&day=2025-05-01"))["n__box-deep-10__sound"] == 8
    assert opened(client, begin(client))["n__box-deep-10__sound"] == 3


def test_a_day_to_come_is_today_and_said_so(client, shed):
    later = timezone.localdate() + dt.timedelta(days=3)
    page = client.get(f"{CORRECT}?yard=shed&day={later.isoformat()}")
    assert page.context["at"].errors["day"][0].startswith(f"{later.day} {later:%B %Y}")
    assert "Day today," in text(page)


def test_fewer_than_were_taken_away_since_is_refused_with_the_day(client, moved):
    send(client, begin(client, "yard=shed&day=2025-05-01"), **{"n__box-deep-10__sound": "4"})
    answer = post(client)
    assert answer.status_code == 422
    assert "by 10 May 2025 the book has taken away more than that" in text(answer)


def test_a_book_that_changed_meanwhile_is_not_overwritten(client, shed, yard):
    send(client, begin(client), **{"n__box-deep-10__sound": "7"})
    shown = client.get(reverse("count", args=[newest().pk])).context["shown"]
    lines = [Line("box-deep-10", 5)]
    ledger.move(source=shed, target=yard, lines=lines, day=makers.DAY, who=None, key=makers.fresh_key())
    answer = client.post(reverse("count", args=[newest().pk]), {"shown": shown})
    assert answer.status_code == 422
    assert "the book changed while you looked" in text(answer)
    assert "3 7 4 more" in text(answer)


def test_what_agrees_moves_nothing_and_is_put_down(client, shed):
    page = send(client, begin(client))
    assert "All that was counted agrees" in text(page) and "Post the count" in text(page)
    assert said(post(client)) == ["Counted: the book was right."]
    assert Act.objects.get(name="correct").movements.count() == 0


def test_nothing_counted_is_refused(client, yard):
    makers.make_catalogue()
    begin(client, "yard=fern-hollow")
    page = client.get(reverse("count", args=[newest().pk]))
    assert "Nothing was counted yet." in text(page) and "button filled" not in page.content.decode()
    answer = client.post(reverse("count", args=[newest().pk]), {"shown": page.context["shown"]})
    assert "Nothing was given to count" in text(answer)


def test_posting_twice_books_once(client, shed):
    send(client, begin(client), **{"n__box-deep-10__sound": "7"})
    post(client)
    answer = post(client)
    assert said(answer)[-1].startswith("This was sent before and is booked once.")
    assert Act.objects.filter(name="correct").count() == 1


def test_a_posted_count_is_read_no_more_entered(client, shed):
    enter = begin(client)
    send(client, enter, **{"n__box-deep-10__sound": "7"})
    post(client)
    answer = client.get(enter, follow=True)
    assert answer.redirect_chain[-1][0] == reverse("count", args=[newest().pk])
    assert "8 7 1 missing" in text(answer)


def test_a_count_taken_back_says_so(client, shed):
    send(client, begin(client), **{"n__box-deep-10__sound": "7"})
    post(client)
    client.post(reverse("books-reverse", args=[newest().act_id]))
    assert "Posted, and taken back" in text(client.get(reverse("count", args=[newest().pk])))
    assert "taken back" in text(client.get(COUNTS))


def test_a_draft_is_thrown_away_once(client, shed):
    send(client, begin(client), **{"n__box-deep-10__sound": "7"})
    drop = reverse("count-drop", args=[newest().pk])
    assert "thrown away. Nothing was booked." in said(client.post(drop, follow=True))[0]
    assert "is thrown away" in said(client.post(drop, follow=True))[0]
    assert "Thrown away" in text(client.get(reverse("count", args=[newest().pk])))
    assert client.get(drop).status_code == 405


def test_beginning_anew_tells_of_the_draft_that_waits(client, shed):
    enter = begin(client)
    page = client.get(f"{CORRECT}?yard=shed")
    assert "waits as a draft" in text(page) and enter in page.content.decode()


def test_the_list_tells_what_is_due_what_waits_and_what_was_posted(client, shed, yard):
    told = text(client.get(COUNTS))
    assert "Shed never counted" in told and "Fern Hollow" not in told
    send(client, begin(client), **{"n__box-deep-10__sound": "7"})
    assert "Drafts" in text(client.get(COUNTS))
    post(client)
    told = text(client.get(COUNTS))
    assert "No store waits to be counted." in told and "Drafts 0" in told
    assert [count.location.yard for count in client.get(COUNTS).context["page"]] == [shed]


def test_the_keeper_says_how_often_a_yard_is_counted(client, shed):
    answer = client.post(reverse("counts-interval"), {"months": "3"}, follow=True)
    assert said(answer) == ["A yard is due when it was not counted for 3 months."]
    assert counting.interval_months() == 3
    answer = client.post(reverse("counts-interval"), {"months": "0"}, follow=True)
    assert said(answer) == ["Give a whole number of months, 1 to 60."]
    Keeper.objects.all().delete()
    answer = client.post(reverse("counts-interval"), {"months": "3"}, follow=True)
    assert said(answer)[0].startswith("Whose bees these are is not written down yet")


def test_a_helper_counts_their_own_yards_and_sees_no_other(client, shed, yard):
    begin(client)
    far = newest()
    makers.put(yard, {"box-deep-10": 2})
    client.force_login(makers.make_person("helper", role=HELPER, yards=[yard]))
    assert client.get(reverse("count", args=[far.pk])).status_code == 404
    assert client.get(reverse("count-enter", args=[far.pk])).status_code == 404
    assert "Shed" not in text(client.get(COUNTS))
    send(client, begin(client, "yard=fern-hollow"), **{"n__box-deep-10__sound": "1"})
    assert said(post(client)) == ["Counted Fern Hollow: 1 piece missing."]


def test_a_count_that_is_not_there_is_not_found(client, shed):
    for name in ("count", "count-enter"):
        assert client.get(reverse(name, args=[999])).status_code == 404


def test_the_list_goes_page_by_page(client, shed):
    for _ in range(26):
        count = counting.begin(location=shed, day=makers.DAY, who=None, key=makers.fresh_key())
        counting.enter(count, [(shed, "box-deep-10", "sound", 8)])
        counting.post_count(count, who=None)
    assert "Page 1 of 2" in text(client.get(COUNTS))
    assert "Page 2 of 2" in text(client.get(f"{COUNTS}?page=2"))
