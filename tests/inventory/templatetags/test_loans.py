"""What is due back stands on the page of the week of who may book it back, and of nobody else."""

import pytest

from inventory import ledger
from inventory.ledger import Line
from inventory.templatetags.loans import loans_due
from tests import makers

pytestmark = pytest.mark.django_db


def test_loans_due_are_told_to_who_may_book_them_back():
    shed = makers.make_shed()
    makers.put(shed, {"excluder-10": 4})
    told = {
        "source": shed,
        "to": "A. Neighbour",
        "lines": [Line("excluder-10", 1)],
        "day": makers.DAY,
        "who": None,
    }
    loan = ledger.lend(due_on=makers.DAY, key="due", **told).loan
    ledger.lend(key="open-ended", **told)
    keeper, reader = makers.make_person("keeper"), makers.make_person("reader", role="reader", yards=[shed])
    assert [row.loan for row in loans_due({"user": keeper}, makers.DAY)["loans"]] == [loan]
    assert loans_due({"user": reader}, makers.DAY)["loans"] == []
