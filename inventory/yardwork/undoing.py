"""An act taken back whole: its gear goes back and what it told of colonies no longer counts, in one transaction.

Takes the act; gives the reversal, dated as the act itself unless a later day is told. Refused where something
later rests on it: gear that has gone on, a colony that was worked, split or moved since.
"""

from django.db.models import Q

from apiary import colonies
from apiary.models import Colony, ColonyEvent
from inventory.deadouts.holds import refuse_loosening
from inventory.errors import LaterWork, refuse
from inventory.ledger.posting import post
from inventory.ledger.reversal import entries_back, may_free
from inventory.models import Act
from inventory.sales import returned_since
from inventory.yardwork.refusals import BroughtBack

LIVES = (ColonyEvent.Kind.STARTED, ColonyEvent.Kind.ENDED)


def undo(act, *, who, key, day=None, note="", never_stood=False):
    """Reverses the act's movements and undoes its colony events together. Once only; a resend changes nothing.

    `never_stood`: the keeper says that gear told onto a hive under an open case was never there.
    """
    on = act.day if day is None else day

    def entries():
        refuse_loosening(act, who)
        back = entries_back(act, on, free=may_free(who, never_stood))
        refuse([*_worked_since(act), *_brought_back_since(act)])
        colonies.undo(act.key, who=who, day=on)
        return back

    return post("reverse", entries, day=on, who=who, key=key, note=note, reverses=act)


def _worked_since(act):
    """A refusal for each colony the act began or ended on which something else was booked after it."""
    told = ColonyEvent.objects.counted().filter(act_key=act.key, kind__in=LIVES)
    for colony in Colony.objects.filter(pk__in=told.values("colony")):
        later = _later(act, colony)
        if later is not None:
            yield LaterWork(act=act, later=later, colony=colony)


def _brought_back_since(act):
    """A refusal where the act sold bees and the buyer has brought something back."""
    back = returned_since(act)
    if back is not None:
        yield BroughtBack(act=act, buyer=back.sale.buyer, day=back.day)


def _later(act, colony):
    """The last act that moved gear on the colony after this one and still stands."""
    on_it = Q(movements__source__colony=colony) | Q(movements__target__colony=colony)
    standing = Act.objects.filter(pk__gt=act.pk, reverses__isnull=True, reversed_by__isnull=True)
    return standing.filter(on_it).order_by("pk").last()
