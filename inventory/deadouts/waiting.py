"""What still waits after colonies died: hives to work, combs to freeze, inspectors to call.

Takes the day; gives rows for this week's sheet and the deadouts' page. Changes nothing.
"""

from django.db.models import Exists, OuterRef

from apiary.models import Colony
from inventory.deadouts.holds import case_of
from inventory.gear import Comb
from inventory.models import Deadout, InspectorWord, Location, MothCare, Movement
from inventory.stock import ended_with_gear


def to_work(*, on):
    """Colonies that died by the day, still hold gear and were not worked, each with its `pieces`."""
    done = Deadout.objects.standing().filter(colony=OuterRef("pk"))
    return ended_with_gear(on=on).filter(ended_why=Colony.Ended.DIED).exclude(Exists(done))


def worked_deadouts():
    """All that stand, the latest first."""
    return Deadout.objects.standing().select_related("colony__yard", "act__who")


def to_freeze():
    """Worked deadouts whose drawn combs lie in a store and were not yet cared for against wax moth.

    Those of a suspected or confirmed case are left out: they stay closed.
    """
    cared = MothCare.objects.standing().filter(deadout=OuterRef("pk"))
    combs = Movement.objects.filter(
        act=OuterRef("act"), part__comb=Comb.DRAWN, target__kind=Location.Kind.STORE, source__kind="colony"
    )
    over_bench = Movement.objects.filter(
        act=OuterRef("act"), part__comb=Comb.DRAWN, target__kind=Location.Kind.BENCH, source__kind="colony"
    )
    rows = worked_deadouts().filter(Exists(combs) | Exists(over_bench)).exclude(Exists(cared))
    return [row for row in rows if case_of(row) not in ("suspected", "confirmed")]


def to_call():
    """Suspected cases on which no inspector's word was told yet."""
    told = InspectorWord.objects.standing().filter(deadout=OuterRef("pk")).exclude(verdict="treated")
    return list(worked_deadouts().filter(suspected=True).exclude(Exists(told)))
