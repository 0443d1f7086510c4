"""Deadouts, suspicions, words, releases, loads, counts and reversals in random order: what is held stays held.

After every act the books are proven, every held piece has a lot that says why, a worked hive holds nothing, and
nothing held back came loose but by the keeper on a written word, never frames beside a case confirmed.
"""

import os
from functools import partial

import pytest
from django.db import transaction
from django.utils import timezone
from hypothesis import HealthCheck, Phase, settings
from hypothesis import strategies as st
from hypothesis.stateful import RuleBasedStateMachine, initialize, invariant, rule, run_state_machine_as_test

from inventory import counting, ledger
from inventory.deadouts.fates import CAUSES, FATES
from inventory.deadouts.holds import case_of, held_lots
from inventory.deadouts.refusals import KeeperReleases
from inventory.deadouts.release import release, tell_verdict
from inventory.deadouts.work import work_deadout
from inventory.errors import Refused
from inventory.gear import Condition, Reason
from inventory.ledger import Line
from inventory.locations import store_of
from inventory.models import Act, Count, Deadout, Hold, Holding, InspectorWord, Movement
from inventory.proof import prove
from inventory.stock import on_colony
from inventory.yardwork import undo
from tests import makers
from tests.inventory.deadouts.conftest import FOUND, HIVE, hive_of, pieces_of

PARTS = ("box-deep-10", "comb-deep-brood", "floor-10")
stores, hives = st.integers(0, 1), st.integers(0, 2)
WORD = {"inspector": "An invented inspector", "written_on": FOUND, "words": "as it was found"}


class Deadouts(RuleBasedStateMachine):
    """A shed, a yard, three hives in it; a keeper and a helper."""

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
        self.keeper = makers.make_person("keeper")
        self.helper = makers.make_person("helper", role="helper")
        self.stores = [makers.make_shed(), makers.make_yard("fern-hollow")]
        self.hives = [hive_of(tag, self.stores[1]) for tag in ("F-01", "F-02", "F-03")]
        makers.put(self.stores[0], HIVE)

    def tried(self, act, /, **told):
        """The act, or None where the trade refuses it; a refusal writes nothing, a resend neither."""
        self.number += 1
        told = {"who": self.keeper, "key": f"act {self.number}", "day": FOUND, **told}
        before = self.fingerprint()
        try:
            done = act(**told)
        except Refused as refused:
            assert str(refused)
            assert self.fingerprint() == before
            return None
        after = self.fingerprint()
        assert act(**told) == done
        assert self.fingerprint() == after
        return done

    def fingerprint(self):
        tables = (Act, Movement, Hold, InspectorWord, Deadout)
        rows = Holding.objects.filter(quantity__gt=0).order_by("location", "part", "condition")
        kept = list(rows.values_list("location", "part", "condition", "quantity"))
        return [table.objects.count() for table in tables], kept

    @rule(
        hive=hives,
        cause=st.sampled_from(CAUSES),
        looked=st.booleans(),
        suspected=st.booleans(),
        fate=st.sampled_from((*FATES, "held")),
        into=stores,
    )
    def work(self, hive, cause, looked, suspected, fate, into):
        colony = self.hives[hive]
        seen = {"cause": cause, "brood_seen": looked, "suspected": suspected}
        told = {"pieces": pieces_of(colony, fate), "into": self.stores[into], **seen}
        if self.tried(work_deadout, colony=colony, **told) is not None:
            assert on_colony(colony) == {}
            if suspected and told["pieces"]:
                assert fate in ("held", "burnt")

    @rule(number=st.integers(0, 2), verdict=st.sampled_from(("cleared", "confirmed")))
    def tell(self, number, verdict):
        rows = list(Deadout.objects.standing())
        if rows:
            self.tried(tell_verdict, deadout=rows[number % len(rows)], verdict=verdict, **WORD)

    @rule(
        at=stores,
        part=st.sampled_from(PARTS),
        number=st.integers(1, 4),
        case=st.integers(0, 3),
        verdict=st.sampled_from(("cleared", "treated")),
    )
    def release(self, at, part, number, case, verdict):
        rows = [None, *Deadout.objects.standing()]
        place, row = self.stores[at], makers.part(part)
        told = {"at": place, "lines": [Line(part, number)], "deadout": rows[case % len(rows)]}
        told |= {"verdict": verdict, **WORD}
        with pytest.raises(KeeperReleases):
            release(**told, who=self.helper, key=f"helper {self.number}", day=FOUND)
        beside = held_lots(part=row, location=place).get((store_of(place).pk, row.pk), [])
        confirmed = any(case_of(one) == "confirmed" for lot in beside for one in lot.cases)
        done = self.tried(release, **told)
        if confirmed and row.kind == "frame":
            assert done is None

    @rule(
        here=stores,
        part=st.sampled_from(PARTS),
        number=st.integers(1, 4),
        how=st.sampled_from(Condition),
        late=st.booleans(),
    )
    def haul(self, here, part, number, how, late):
        ends = {"source": self.stores[here], "target": self.stores[1 - here]}
        day = timezone.localdate() if late else FOUND
        self.tried(ledger.move, lines=[Line(part, number, how)], day=day, **ends)

    @rule(at=stores, part=st.sampled_from(PARTS), number=st.integers(1, 4))
    def burn(self, at, part, number):
        lines = [Line(part, number, Condition.HELD)]
        self.tried(ledger.burn, at=self.stores[at], lines=lines)

    @rule(at=stores, part=st.sampled_from(PARTS), number=st.integers(0, 6), how=st.sampled_from(Condition))
    def count(self, at, part, number, how):
        self.number += 1
        place, key = self.stores[at], f"count {self.number}"
        draft = counting.begin(location=place, day=timezone.localdate(), who=self.keeper, key=key)
        counting.enter(draft, [(place, part, how, number)])
        before = self.fingerprint()
        try:
            counting.post_count(draft, who=self.keeper)
        except Refused:
            assert self.fingerprint() == before
            return
        there = Holding.objects.filter(location=store_of(place), part__code=part, condition=how)
        assert sum(there.values_list("quantity", flat=True)) == number
        assert Count.objects.get(pk=draft.pk).status == Count.Status.POSTED

    @rule(number=st.integers(0, 50))
    def reverse(self, number):
        acts = list(Act.objects.order_by("id"))
        act = acts[number % len(acts)]
        self.tried(partial(undo, act), day=max(act.day, FOUND))

    @invariant()
    def the_books_are_right(self):
        assert prove().faults == ()

    @invariant()
    def every_held_piece_says_why(self):
        held = Holding.objects.filter(condition=Condition.HELD, quantity__gt=0)
        booked = {(row.location_id, row.part_id): row.quantity for row in held}
        lots = {key: sum(lot.quantity for lot in found) for key, found in held_lots().items()}
        assert lots == booked

    @invariant()
    def nothing_comes_loose_without_a_written_word(self):
        loose = Movement.objects.filter(reason=Reason.RELEASED, act__inspector_word__isnull=True)
        assert not loose.filter(act__reverses__isnull=True).exists()

    @invariant()
    def a_worked_hive_holds_nothing(self):
        for row in Deadout.objects.standing().select_related("colony"):
            assert on_colony(row.colony) == {}


@pytest.mark.django_db
def test_whatever_comes_after_a_deadout_what_is_held_stays_held():
    """EXAMPLES=200 in the environment tries longer."""
    makers.make_catalogue()
    run_state_machine_as_test(
        Deadouts,
        settings=settings(
            max_examples=int(os.environ.get("EXAMPLES", "10")),
            stateful_step_count=14,
            deadline=None,
            database=None,
            derandomize=True,
            phases=[Phase.generate],
            suppress_health_check=list(HealthCheck),
        ),
    )
