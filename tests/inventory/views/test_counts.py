"""A count through its page: counted beside booked, the difference booked, nothing posted over a changed book."""

import pytest
from django.urls import reverse

from inventory import ledger, stock
from inventory.gear import Condition, Gear
from inventory.ledger import Line
from inventory.models import Act
from tests import makers
from tests.inventory.views.sending import faults, opened, said, send, text

pytestmark = pytest.mark.django_db
CORRECT = reverse("act-correct")


@pytest.fixture(autouse=True)
def signed_in(keeper):
    return keeper


def test_the_book_stands_beside_and_what_agrees_moves_nothing(client, shed):
    assert opened(client, f"{CORRECT}?yard=shed")["n__box-deep-10__sound"] == 8
    answer = send(client, f"{CORRECT}?yard=shed")
    assert said(answer) == ["Counted: the book was right."]
    assert Act.objects.get(name="correct").movements.count() == 0


def test_more_and_missing_are_booked(client, shed):
    numbers = {"n__box-deep-10__sound": "12", "n__comb-medium-honey__sound": "37"}
    answer = send(client, f"{CORRECT}?yard=shed", **numbers)
    assert said(answer) == ["Counted Shed: 4 pieces more, 3 pieces missing."]
    assert stock.on_hand(shed)[Gear(part="box-deep-10")] == 12
    assert stock.on_hand(shed)[Gear(part="comb-medium-honey")] == 37


def test_an_emptied_number_was_not_counted_and_zero_was(client, shed):
    send(client, f"{CORRECT}?yard=shed", **{"n__box-deep-10__sound": "", "n__box-deep-8__sound": "0"})
    there = stock.on_hand(shed)
    assert there[Gear(part="box-deep-10")] == 8
    assert Gear(part="box-deep-8") not in there


def test_what_the_book_does_not_know_is_added(client, shed):
    address = f"{CORRECT}?yard=shed"
    page = send(client, address, add="row", also="cover-10", also_condition="to_mend")
    assert "n__cover-10__to_mend" in page.context["form"].fields
    send(client, address, **{"n__cover-10__to_mend": "2"})
    assert stock.on_hand(shed)[Gear(part="cover-10", condition=Condition.TO_MEND)] == 2


def test_a_colony_is_counted_too_and_only_what_fits_is_found_on_it(client, shed, colony):
    address = f"{CORRECT}?colony={colony.pk}"
    send(client, address, **{"n__box-deep-10__sound": "1"})
    assert stock.on_hand(colony)[Gear(part="box-deep-10")] == 1
    answer = send(client, address, **{"n__box-deep-8__sound": "1"})
    assert faults(answer)[0].startswith("deep box, 8 frames does not fit colony F-01")


def test_a_past_evening_is_counted_against_the_book_of_that_evening(client, moved):
    assert opened(client, f"{CORRECT}?yard=shed&day=2025-05-01")["n__box-deep-10__sound"] == 8
    assert opened(client, f"{CORRECT}?yard=shed")["n__box-deep-10__sound"] == 3


def test_a_count_that_would_leave_a_later_day_below_zero_is_refused(client, moved):
    answer = send(client, f"{CORRECT}?yard=shed&day=2025-05-01", **{"n__box-deep-10__sound": "4"})
    assert answer.status_code == 422
    assert "on 10 May 2025" in faults(answer)[0]


def test_a_book_that_changed_meanwhile_is_not_overwritten(client, shed, yard):
    fields = opened(client, f"{CORRECT}?yard=shed")
    lines = [Line("box-deep-10", 5)]
    ledger.move(source=shed, target=yard, lines=lines, day=makers.DAY, who=None, key=makers.fresh_key())
    answer = client.post(f"{CORRECT}?yard=shed", fields)
    assert answer.status_code == 422
    assert "The book changed while you counted: it said 8, it says 3 now. Look once more." in text(answer)
    assert 'name="was__box-deep-10__sound" value="3"' in answer.content.decode()


def test_nothing_counted_is_refused(client, yard):
    makers.make_catalogue()
    answer = send(client, f"{CORRECT}?yard=fern-hollow")
    assert faults(answer) == ["Nothing was given to count: name at least one part and how many."]
