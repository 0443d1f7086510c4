"""Random acts in random order on random days: the books stay right, and say so.

After every act each part is conserved, nothing is below zero on any evening, the kept balances equal a plain
count over all movements, past days are answered from evenings kept as by that count, a resend changes nothing,
a reversal restores what was, book equals count once corrected, and an ended colony that was worked holds nothing.
"""

import datetime as dt
import os
from collections import Counter

import pytest
from django.db import transaction
from hypothesis import HealthCheck, Phase, settings
from hypothesis import strategies as st
from hypothesis.stateful import (
    Bundle,
    RuleBasedStateMachine,
    initialize,
    invariant,
    rule,
    run_state_machine_as_test,
)

from apiary import colonies
from inventory import ledger, stock
from inventory.errors import Refused
from inventory.gear import Gear
from inventory.ledger import Arrival, Line, Piece, evenings
from inventory.models import Act, BookSeal, Holding, Location, Movement
from inventory.proof import prove
from tests import makers

START = dt.date(2025, 4, 1)
PARTS = (
    "stand",
    "box-medium-10",
    "box-medium-8",
    "frame-medium",
    "foundation-medium",
    "frame-medium-foundation",
)
CONDITIONS = ("sound", "to mend", "held back")
days = st.integers(0, 40).map(lambda number: START + dt.timedelta(days=number))
quantities = st.integers(1, 9)
lines = st.lists(
    st.builds(
        Line, st.sampled_from(PARTS), quantities, st.sampled_from(("sound", "sound", "sound", *CONDITIONS))
    ),
    min_size=1,
    max_size=3,
)
stores = st.integers(0, 2)
hives = st.integers(0, 3)


class Books(RuleBasedStateMachine):
    """Three stores, four colonies (one of eight frames, one that dies), one order, and whatever acts come."""

    acts = Bundle("acts")

    def __init__(self):
        super().__init__()
        self.sandbox = transaction.atomic()
        self.sandbox.__enter__()
        self.number = 0

    def teardown(self):
        transaction.set_rollback(True)
        self.sandbox.__exit__(None, None, None)

    @initialize()
    def lay_out(self):
        self.stores = [makers.make_shed(), makers.make_yard("creek"), makers.make_yard("hill")]
        self.hives = [
            makers.make_colony("A", yard=self.stores[1], day=START),
            makers.make_colony("B", yard=self.stores[2], day=START, hive_set="one-deep-8"),
            makers.make_colony("C", yard=self.stores[1], day=START + dt.timedelta(days=5)),
        ]
        gear = {"box-medium-10": 3, "frame-medium-foundation": 9}
        self.hives.append(makers.make_colony("D", yard=self.stores[2], day=START))
        makers.put(self.hives[3], gear, day=START)
        colonies.end(self.hives[3], why="died", day=START + dt.timedelta(days=10), who=None)
        self.order = makers.make_order({makers.make_offer({"box-medium-10": 5, "frame-medium": 20}): 2})
        makers.put(self.stores[0], dict.fromkeys(PARTS, 12), day=START)

    def tried(self, act, /, **told):
        """The act, or None where the trade refuses it; then nothing at all has changed."""
        self.number += 1
        told = {"who": None, "key": f"act {self.number}", **told}
        before = self.fingerprint()
        try:
            done = act(**told)
        except Refused as refused:
            assert str(refused).endswith(".")
            assert self.fingerprint() == before
            return None
        after = self.fingerprint()
        assert act(**told) == done
        assert self.fingerprint() == after
        return done

    def fingerprint(self):
        balances = Holding.objects.filter(quantity__gt=0).order_by("location", "part", "condition")
        seal = BookSeal.objects.get()
        kept = list(balances.values_list("location", "part", "condition", "quantity"))
        return seal.length, seal.head, Act.objects.count(), kept

    @rule(target=acts, at=stores, lines=lines, day=days)
    def open_stock(self, at, lines, day):
        return self.tried(ledger.open_stock, location=self.stores[at], lines=lines, day=day)

    @rule(target=acts, came=st.integers(0, 7), broken=st.integers(0, 2), over=st.booleans(), day=days)
    def receive(self, came, broken, over, day):
        arrivals = [Arrival(part="box-medium-10", sound=came, to_mend=broken, scrapped=broken)]
        told = {"order": self.order, "into": self.stores[0], "arrivals": arrivals, "over_allowed": over}
        return self.tried(ledger.receive, day=day, **told)

    @rule(target=acts, here=stores, there=stores, lines=lines, day=days, found=st.booleans())
    def move(self, here, there, lines, day, found):
        ends = {"source": self.stores[here], "target": self.stores[there]}
        return self.tried(ledger.move, lines=lines, day=day, found_allowed=found, **ends)

    @rule(target=acts, here=stores, hive=hives, lines=lines, day=days, found=st.booleans())
    def place(self, here, hive, lines, day, found):
        ends = {"source": self.stores[here], "colony": self.hives[hive]}
        return self.tried(ledger.place, lines=lines, day=day, found_allowed=found, **ends)

    @rule(target=acts, hive=hives, there=stores, lines=lines, day=days, found=st.booleans())
    def take_off(self, hive, there, lines, day, found):
        ends = {"colony": self.hives[hive], "target": self.stores[there]}
        return self.tried(ledger.take_off, lines=lines, day=day, found_allowed=found, **ends)

    @rule(target=acts, times=st.integers(1, 6), at=stores, day=days)
    def assemble(self, times, at, day):
        told = {"recipe": "fit-foundation-medium", "times": times, "at": self.stores[at]}
        return self.tried(ledger.assemble, day=day, **told)

    @rule(target=acts, hive=hives, quantity=quantities, day=days, found=st.booleans())
    def draw(self, hive, quantity, day, found):
        told = {"colony": self.hives[hive], "lines": [Line("frame-medium-foundation", quantity)]}
        return self.tried(ledger.draw, day=day, found_allowed=found, **told)

    @rule(target=acts, at=stores, lines=lines, becomes=st.sampled_from(CONDITIONS), day=days)
    def mark(self, at, lines, becomes, day):
        return self.tried(ledger.mark, at=self.stores[at], lines=lines, becomes=becomes, day=day)

    @rule(
        target=acts,
        act=st.sampled_from([ledger.mend, ledger.scrap, ledger.burn, ledger.use]),
        at=stores,
        lines=lines,
        day=days,
    )
    def care(self, act, at, lines, day):
        return self.tried(act, at=self.stores[at], lines=lines, day=day)

    @rule(target=acts, at=stores, counted=lines, day=days)
    def correct(self, at, counted, day):
        act = self.tried(ledger.correct, location=self.stores[at], counted=counted, day=day)
        if act is not None:
            sums = Counter()
            for line in counted:
                sums[Gear(part=line.part, condition=line.condition)] += line.quantity
            there = stock.on_hand(self.stores[at], as_of=day)
            assert {gear: there[gear] for gear in sums} == sums
        return act

    @rule(hive=hives, day=days)
    def end(self, hive, day):
        self.number += 1
        try:
            colonies.end(self.hives[hive], why="died", day=day, who=None)
        except Refused:
            return

    @rule(
        target=acts,
        hive=hives,
        part=st.sampled_from(PARTS),
        counts=st.tuples(*[st.integers(0, 3)] * 6),
        day=days,
        found=st.booleans(),
    )
    def salvage(self, hive, part, counts, day, found):
        names = ("sound", "to_mend", "held", "scrapped", "burnt", "lost")
        pieces = [Piece(part=part, **dict(zip(names, counts, strict=True)))]
        told = {"colony": self.hives[hive], "into": self.stores[0], "pieces": pieces}
        return self.tried(ledger.salvage, day=day, found_allowed=found, **told)

    @rule(hive=hives, day=days, found=st.booleans())
    def work(self, hive, day, found):
        """An ended colony of which every piece is told holds nothing."""
        there = stock.on_colony(self.hives[hive], as_of=day)
        counts = Counter()
        for gear, quantity in there.items():
            counts[gear.part] += quantity
        if not counts:
            return
        pieces = [Piece(part=part, sound=quantity) for part, quantity in counts.items()]
        told = {"colony": self.hives[hive], "into": self.stores[1], "pieces": pieces}
        if self.tried(ledger.salvage, day=day, found_allowed=found, **told) is not None:
            assert stock.on_colony(self.hives[hive], as_of=day) == {}

    @rule(act=acts)
    def reverse(self, act):
        if act is None:
            return
        if act.movements.exists() and not Act.objects.filter(reverses=act).exists():
            expected = self.evening(act.day, without=act)
            if self.tried(ledger.reverse, act=act) is not None:
                assert self.evening(act.day) == expected
        else:
            self.tried(ledger.reverse, act=act)

    def evening(self, day, *, without=None):
        """All balances of a day by a plain count, as if `without` had never been."""
        balances = Counter()
        for row in Movement.objects.filter(day__lte=day).exclude(act=without):
            balances[row.target_id, row.part_id, row.condition] += row.quantity
            balances[row.source_id, row.part_id, row.condition] -= row.quantity
        return {key: quantity for key, quantity in balances.items() if quantity}

    @invariant()
    def the_books_are_right(self):
        assert prove().faults == ()

    @invariant()
    def every_part_is_conserved(self):
        totals = Counter()
        for (_, part, _), quantity in self.evening(dt.date.max).items():
            totals[part] += quantity
        assert not any(totals.values())

    @invariant()
    def past_days_are_answered_as_by_a_plain_count(self):
        inside = set(Location.objects.filter(kind__in=Location.INSIDE).values_list("pk", flat=True))
        for number in (0, 7, 21, 40):
            day = START + dt.timedelta(days=number)
            plain = {
                (place, evenings.gear_key(part, condition)): quantity
                for (place, part, condition), quantity in self.evening(day).items()
                if place in inside
            }
            kept = evenings.balances_on(day)
            assert {(place, gear): n for place, gears in kept.items() for gear, n in gears.items()} == plain

    @invariant()
    def the_present_equals_the_last_evening(self):
        last = START + dt.timedelta(days=400)
        assert stock.owned() == stock.owned(as_of=last)
        assert stock.by_place() == stock.by_place(as_of=last)


def run(**options):
    usual = {"deadline": None, "database": None, "derandomize": True}
    quiet = {"suppress_health_check": list(HealthCheck)}
    run_state_machine_as_test(Books, settings=settings(**usual, **quiet, **options))


@pytest.mark.django_db
def test_random_acts_leave_the_books_right(monkeypatch):
    """EXAMPLES=400 in the environment tries longer."""
    makers.make_catalogue()
    monkeypatch.setattr(evenings, "STEP", 6)
    run(
        max_examples=int(os.environ.get("EXAMPLES", "15")),
        stateful_step_count=20,
        phases=[Phase.generate],
    )
