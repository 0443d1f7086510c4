"""What of the books is kept with a run."""

import json
from dataclasses import replace

from planner.comparing import books_of
from planner.season.operation import OnOrder, SoFar
from tests.planner.operations import DAY, operation


def test_what_is_kept_is_plain_and_the_same_each_time(answers):
    kept = books_of(operation(), answers())
    assert json.loads(json.dumps(kept)) == kept == books_of(operation(), answers())
    assert (kept["day"], kept["colonies"], kept["winter_ahead"]) == (DAY.isoformat(), 110, True)


def test_gear_in_stores_and_on_colonies_is_one_sum_held_gear_is_none(answers):
    whole = operation()
    held = replace(whole.stock[0], condition="held", quantity=50)
    kept = books_of(replace(whole, stock=(*whole.stock, held)), answers())
    assert kept["owned"]["box-medium-10"] == 132


def test_what_is_on_the_way_adds_up_by_part(answers):
    coming = [OnOrder(part="floor-10", quantity=n, due=DAY, reference=f"order {n}") for n in (4, 5)]
    kept = books_of(operation(on_order=tuple(coming), so_far=SoFar(dead=((DAY, 2),))), answers())
    assert (kept["on_order"], kept["dead"]) == ({"floor-10": 9}, [[DAY.isoformat(), 2]])
