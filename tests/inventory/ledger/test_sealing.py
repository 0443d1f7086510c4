"""What is derived put right: the seal after a change of key, evenings worked out anew."""

import pytest

from inventory.ledger import evenings
from inventory.ledger.digest import is_marked
from inventory.ledger.sealing import seal_again, work_out_evenings
from inventory.models import BookSeal, Evening
from inventory.proof import prove
from tests import makers

pytestmark = pytest.mark.django_db


def test_a_seal_signed_again_carries_the_present_key(settings):
    makers.put(makers.make_shed(), {"stand": 10})
    settings.SECRET_KEY = "another, as long as a key should be"
    assert not is_marked(BookSeal.objects.get())
    seal_again()
    assert is_marked(BookSeal.objects.get())
    makers.put(makers.make_shed(), {"jar": 10})
    assert prove().faults == ()


def test_evenings_worked_out_again_are_right_whatever_was_kept(monkeypatch):
    monkeypatch.setattr(evenings, "STEP", 2)
    for number in range(6):
        makers.put(makers.make_shed(), {"stand": 10}, day=makers.DAY.replace(day=number + 1))
    kept = list(Evening.objects.values_list("day", "length", "balances"))
    Evening.objects.update(balances={}, length=1)
    assert prove().faults
    work_out_evenings()
    assert prove().faults == ()
    assert Evening.objects.count() == len(kept) >= 2
