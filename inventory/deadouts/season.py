"""The season's losses by yard and cause, from the colonies' events and the deadouts worked.

Takes two evenings and the yards; gives SeasonLosses. A colony that came from another yard counts there as removed and
here as increase; the yard where it died bears the loss.
"""

from collections import Counter, defaultdict

from django.db.models import Q

from apiary.losses import ColonyBalance
from apiary.models import Colony, Yard
from inventory.deadouts.figures import YardLosses, season_losses
from inventory.deadouts.stays import stays_until, yard_at
from inventory.models import Deadout

LEFT = (Colony.Ended.SOLD, Colony.Ended.UNITED)
NOT_WORKED, DISASTER = "not worked yet", "lost: flood, theft, bear"


def losses_between(since, until, *, yards=None):
    """Losses after the evening of `since` up to that of `until`; of some yards only, where their keys are told."""
    span = Colony.objects.real().filter(started_on__lte=until)
    span = span.filter(Q(ended_on__isnull=True) | Q(ended_on__gt=since))
    stays, causes = stays_until(until), _causes()
    counts: dict[int, Counter] = defaultdict(Counter)
    dead: dict[int, Counter] = defaultdict(Counter)
    names: dict[int, Yard] = {}
    for colony in span:
        first = yard_at(stays[colony.pk], since)
        last = yard_at(stays[colony.pk], colony.ended_on or until)
        names |= {first.pk: first, last.pk: last}
        _count(colony, counts, dead, (first.pk, last.pk), (since, until), causes)
    chosen = [yard for key, yard in names.items() if yards is None or key in yards]
    rows = [
        YardLosses(yard=str(yard), balance=_balance(counts[yard.pk]), causes=dict(dead[yard.pk]))
        for yard in sorted(chosen, key=str)
    ]
    return season_losses(rows)


def _count(colony, counts, dead, ends, span, causes):
    (first, last), (since, until) = ends, span
    counts[first]["start" if colony.started_on <= since else "increase"] += 1
    if first != last:
        counts[first]["removed"] += 1
        counts[last]["increase"] += 1
    if colony.ended_on is None or colony.ended_on > until:
        counts[last]["end"] += 1
    elif colony.ended_why in LEFT:
        counts[last]["removed"] += 1
    else:
        lost = colony.ended_why == Colony.Ended.LOST
        dead[last][DISASTER if lost else causes.get(colony.pk, NOT_WORKED)] += 1


def _balance(counts):
    return ColonyBalance(
        start=counts["start"], increase=counts["increase"], removed=counts["removed"], end=counts["end"]
    )


def _causes():
    """{colony's key: what it died of as far as anybody could tell}."""
    rows = Deadout.objects.standing()
    return {row.colony_id: row.get_cause_display() for row in rows}
