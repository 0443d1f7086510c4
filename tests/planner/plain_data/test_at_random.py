"""Random books, out and in and out again: the files are the same byte by byte, and the books are right.

The streams of acts are those that try the ledger and the deadouts.
"""

import os

import pytest
from hypothesis import HealthCheck, Phase, settings
from hypothesis.stateful import run_state_machine_as_test

from inventory.ledger import evenings
from inventory.proof import prove
from planner.plain_data.loading import load
from planner.plain_data.writing import export
from tests import makers
from tests.inventory.deadouts.test_deadouts_at_random import Deadouts
from tests.inventory.test_books_at_random import Books
from tests.planner.plain_data.emptied import empty, files_of

pytestmark = pytest.mark.django_db


def round_trip(first, second):
    """Out, in and out again, whatever the acts before left behind; gives how many rows made the way."""
    export(first)
    empty()
    done = load(first)
    assert prove().faults == () and not done.sealed_anew
    export(second)
    assert files_of(first) == files_of(second)
    return sum(done.rows.values())


def trips_of(machine, folder, *, examples, steps):
    """The rows of each trip; EXAMPLES=200 in the environment tries longer."""
    trips: list[int] = []

    class OutAndIn(machine):
        def teardown(self):
            try:
                trips.append(round_trip(folder / f"{len(trips)}", folder / f"{len(trips)}-again"))
            finally:
                super().teardown()

    run_state_machine_as_test(
        OutAndIn,
        settings=settings(
            max_examples=int(os.environ.get("EXAMPLES", examples)),
            stateful_step_count=steps,
            deadline=None,
            database=None,
            derandomize=True,
            phases=[Phase.generate],
            suppress_health_check=list(HealthCheck),
        ),
    )
    return trips


def test_random_books_are_the_same_after_a_way_out_and_in(monkeypatch, tmp_path):
    makers.make_catalogue()
    monkeypatch.setattr(evenings, "STEP", 6)
    trips = trips_of(Books, tmp_path, examples="4", steps=12)
    assert len(trips) >= 3 and min(trips) > 100


def test_random_deadouts_are_the_same_after_a_way_out_and_in(tmp_path):
    makers.make_catalogue()
    trips = trips_of(Deadouts, tmp_path, examples="4", steps=10)
    assert len(trips) >= 3 and min(trips) > 100
