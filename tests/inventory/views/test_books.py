"""The books: acts newest first, narrowed, told whole, reversed by another act and never edited."""

import datetime as dt

import pytest
from django.urls import reverse
from django.utils import timezone

from apiary.rights import HELPER
from inventory import ledger, stock
from inventory.deadouts.work import work_deadout
from inventory.gear import Gear
from inventory.ledger import Line
from inventory.models import Act
from tests import makers
from tests.inventory.views.sending import said, text

pytestmark = pytest.mark.django_db
BOOKS = reverse("books")


@pytest.fixture(autouse=True)
def signed_in(keeper):
    return keeper


@pytest.fixture
def moved(keeper, shed, yard):
    return ledger.move(
        source=shed,
        target=yard,
        lines=[Line("box-deep-10", 5)],
        day=dt.date(2025, 5, 10),
        who=keeper,
        key=makers.fresh_key(),
        note="first load",
    )


def reversal(act):
    return reverse("books-reverse", args=[act.pk])


def shown(answer):
    return [act.head for act in answer.context["page"].object_list]


def test_acts_stand_newest_first_with_movements_note_and_who(client, moved):
    answer = client.get(BOOKS)
    assert shown(answer) == ["Moved", "Opening stock"]
    words = text(answer)
    assert "5 deep box, 10 frames: Shed to Fern Hollow" in words
    assert "10 May 2025, keeper" in words and "first load" in words


@pytest.mark.parametrize(
    ("query", "heads"),
    [
        ("place=fern-hollow", ["Moved"]),
        ("place=shed", ["Moved", "Opening stock"]),
        ("part=sugar", ["Opening stock"]),
        ("part=box-deep-10&place=fern-hollow", ["Moved"]),
        ("since=2025-05-10", ["Moved"]),
        ("until=2025-05-09", ["Opening stock"]),
        ("since=2025-06-01", []),
    ],
)
def test_they_are_narrowed_by_place_part_and_day(client, moved, query, heads):
    assert shown(client.get(f"{BOOKS}?{query}")) == heads


def test_they_are_narrowed_by_colony(client, shed, colony):
    assert shown(client.get(f"{BOOKS}?colony=F-01")) == ["Opening stock"]
    assert len(shown(client.get(BOOKS))) == 2


def test_only_the_movements_asked_for_are_shown_and_the_rest_is_counted(client, moved):
    opening = client.get(f"{BOOKS}?part=sugar").context["page"].object_list[0]
    assert [row.part.code for row in opening.shown] == ["sugar"]
    assert opening.rest == 3


def test_a_long_history_comes_in_pages(client, shed):
    for number in range(30):
        ledger.use(
            at=shed,
            lines=[Line("sugar", 1)],
            day=makers.DAY + dt.timedelta(days=number),
            who=None,
            key=makers.fresh_key(),
        )
    first, second = client.get(f"{BOOKS}?part=sugar"), client.get(f"{BOOKS}?part=sugar&page=2")
    assert (len(shown(first)), len(shown(second))) == (25, 6)
    assert "?part=sugar&amp;page=2" in first.content.decode()


def test_one_act_is_told_whole(client, moved):
    words = text(client.get(reverse("books-act", args=[moved.pk])))
    assert "Moved 5 pieces from Shed to Fern Hollow. first load" in words
    assert "Reverse this act" in words


def test_reversing_asks_once_more_and_then_puts_all_back(client, moved, shed):
    assert "Every movement goes back, on 10 May 2025." in text(client.get(reversal(moved)))
    assert not Act.objects.filter(reverses=moved).exists()
    answer = client.post(reversal(moved), follow=True)
    assert said(answer) == ["Reversed: moved, of 10 May 2025."]
    assert stock.on_hand(shed)[Gear(part="box-deep-10")] == 8
    assert "Reversed on 10 May 2025" in text(answer)
    assert "Takes back what was booked on 10 May 2025" in text(answer)


def test_pressed_twice_it_is_reversed_once(client, moved):
    client.post(reversal(moved))
    client.post(reversal(moved))
    assert Act.objects.filter(name="reverse").count() == 1


def test_a_reversal_is_not_reversed(client, moved):
    client.post(reversal(moved))
    undone = Act.objects.get(reverses=moved)
    assert "This cannot be reversed." in text(client.get(reversal(undone)))
    answer = client.post(reversal(undone), follow=True)
    assert said(answer)[0].startswith("Nothing was reversed. reverse, 2025-05-10 is itself a reversal")


def test_an_act_reversed_elsewhere_is_not_reversed_again(client, moved, keeper):
    ledger.reverse(act=moved, who=keeper, key=makers.fresh_key())
    assert said(client.post(reversal(moved), follow=True))[0].startswith(
        "Nothing was reversed. move, 2025-05-10 was reversed already"
    )


def test_what_has_gone_on_since_is_not_pulled_from_under_it(client, moved, yard, shed):
    lines = [Line("box-deep-10", 5)]
    ledger.scrap(at=yard, lines=lines, day=dt.date(2025, 6, 1), who=None, key=makers.fresh_key())
    answer = client.post(reversal(moved), follow=True)
    assert "Nothing was reversed. Fern Hollow: 5 of deep box, 10 frames wanted" in said(answer)[0]


def test_undo_leads_back_only_to_pages_of_this_site(client, moved):
    answer = client.post(reversal(moved), HTTP_REFERER="https" + "://elsewhere.example/yards/")
    assert answer.url == BOOKS


def test_it_asks_the_database_no_more_for_more_acts(client, shed, django_assert_max_num_queries):
    for _ in range(20):
        ledger.use(at=shed, lines=[Line("sugar", 1)], day=makers.DAY, who=None, key=makers.fresh_key())
    with django_assert_max_num_queries(12):
        client.get(BOOKS)


def test_a_helper_opens_and_takes_back_only_what_they_booked(client, moved, shed, yard):
    helper = makers.make_person("sam", role=HELPER, yards=[shed, yard])
    own = ledger.move(
        source=shed, target=yard, lines=[Line("box-deep-10", 1)], day=moved.day, who=helper, key="own"
    )
    client.force_login(helper)
    for name in ("books-act", "books-reverse"):
        answer = client.get(reverse(name, args=[moved.pk]))
        assert answer.status_code == 403
        assert "only what you booked yourself" in answer.content.decode()
        assert client.get(reverse(name, args=[own.pk])).status_code == 200
    assert client.post(reverse("books-reverse", args=[moved.pk])).status_code == 403
    assert not Act.objects.filter(reverses=moved).exists()
    assert client.post(reverse("books-reverse", args=[own.pk])).url == reverse("home")
    assert Act.objects.get(reverses=own).who == helper


def test_gear_set_on_a_hive_under_a_case_is_reversed_only_with_the_word_that_it_never_stood_there(
    client, keeper, shed, yard
):
    sick, near = (makers.make_colony(tag, yard=yard, gear=True) for tag in ("F-01", "F-02"))
    told = {"day": timezone.localdate(), "who": keeper}
    seen = {"cause": "disease", "brood_seen": True, "suspected": True, "into": shed, "pieces": []}
    work_deadout(colony=sick, key="case", **seen, **told)
    lines = [Line("excluder-10", 1)]
    act = ledger.place(source=shed, colony=near, lines=lines, key="slip", found_allowed=True, **told)
    page = reverse("books-reverse", args=[act.pk])
    assert "take the gear off: it comes off held back" in text(client.get(page))
    answer = client.post(page, follow=True)
    assert said(answer)[0].startswith("Nothing was reversed.")
    assert not Act.objects.filter(reverses=act).exists()
    client.post(page, {"never_stood": "on"})
    assert Act.objects.filter(reverses=act).exists()
