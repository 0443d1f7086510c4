"""An invented outfit for evenings, and rows as a person types them."""

import datetime as dt

import pytest

from inventory.catching_up.rows import Typed
from tests import makers

DAY = dt.date(2025, 5, 20)


def row(number, act, place="", gear="", quantity="", other="", day=DAY):
    """A row as typed."""
    words = {"act": act, "place": place, "gear": gear, "quantity": str(quantity), "other": other}
    return Typed(number=number, day=day if isinstance(day, str) else day.isoformat(), **words)


@pytest.fixture
def outfit(db):
    """A shed full of gear, two yards, four colonies."""
    makers.make_keeper()
    shed = makers.make_shed()
    yard, other = makers.make_yard("fern-hollow"), makers.make_yard("long-acre")
    for tag, home in (("F-01", yard), ("F-02", yard), ("L-01", other)):
        makers.make_colony(tag, yard=home, gear=True)
    makers.make_colony("N-01", yard=other, hive_set="nuc-5", gear=True)
    makers.put(
        shed,
        {
            "box-medium-10": 20,
            "frame-medium-foundation": 200,
            "comb-medium-honey": 60,
            "box-deep-10": 6,
            "frame-deep-foundation": 60,
            "box-deep-10-flat": 4,
            "sugar": 200,
            "excluder-10": 6,
            "jar": 50,
        },
    )
    makers.put(shed, {"box-medium-10": 3}, condition="to mend")
    return shed
