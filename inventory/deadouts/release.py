"""The inspector's written word kept, and held-back gear released on it. The keeper alone, whatever page is used.

Takes who wrote, the day and the words; gives the Act. `tell_verdict` writes what was found in a case, `release` turns
held pieces sound again. Comb of a confirmed case is never released; frames and combs of a suspected one wait until it
is written that it is none; boxes and the rest need the word that they are clear or were treated. Local rules decide
what is done with them before.
"""

from django.db import transaction
from django.utils import timezone

from apiary.colonies import refuse_future
from apiary.errors import UnknownWord, refuse
from apiary.rights import KEEPER, role_of
from inventory.deadouts.holding import hold_steps, write_holds
from inventory.deadouts.holds import OF_A_CASE, case_of, lots_at
from inventory.deadouts.reach import reach
from inventory.deadouts.refusals import (
    CaseTold,
    CombNeverReleased,
    CombWaits,
    KeeperReleases,
    MixedHeld,
    NotHeldForIt,
    NotTreated,
    NoWrittenWord,
    WordTooEarly,
)
from inventory.gear import Condition, Kind, Reason
from inventory.ledger.lines import Line, checked
from inventory.ledger.posting import turned
from inventory.ledger.rules import inside
from inventory.models import Hold, InspectorWord
from inventory.yardwork.whole import together

Verdict = InspectorWord.Verdict
RELEASING = (Verdict.CLEARED, Verdict.TREATED)


def tell_verdict(*, deadout, verdict, inspector, written_on, words, day, who, key, note=""):
    """The inspector's word on a case. Where it confirms foulbrood, all it reaches is held back in the same act, today."""
    refuse_others(who)
    if verdict not in (Verdict.CLEARED, Verdict.CONFIRMED):
        raise UnknownWord(word=verdict, what="verdict", choices="cleared, confirmed")
    _refuse_unwritten(inspector, written_on, words, deadout)
    refuse_future(day)
    confirmed = verdict == Verdict.CONFIRMED
    on = timezone.localdate() if confirmed else day
    steps = []

    def work(_act_key):
        case = case_of(deadout)
        if case == "confirmed" or (case == "cleared" and not confirmed):
            raise CaseTold(colony=deadout.colony, case=case)
        if confirmed:
            reached = reach(deadout.colony, found_on=deadout.found_on)
            steps.extend(hold_steps(reached, deadout=deadout))
        return [step.entry for step in steps]

    with transaction.atomic():
        act = together("inspector's word", work, day=on, who=who, key=key, note=note)
        if not InspectorWord.objects.filter(act=act).exists():
            _write(act, deadout, verdict, inspector, written_on, words)
            write_holds(act, steps, deadout)
    return act


def release(*, at, lines, verdict, inspector, written_on, words, day, who, key, deadout=None, note=""):
    """Held pieces of a place are sound again. `deadout`: the case they are held for; None where set aside by hand."""
    refuse_others(who)
    if verdict not in RELEASING:
        raise UnknownWord(word=verdict, what="word to release by", choices=", ".join(RELEASING))
    _refuse_unwritten(inspector, written_on, words, deadout)

    def work(_act_key):
        here = inside(at)
        told = checked([Line(line.part, line.quantity, Condition.HELD) for line in lines], act="release")
        refuse(filter(None, (_still_held(line, here, deadout, verdict) for line in told)))
        return [entry for line in told for entry in _released(line, here)]

    with transaction.atomic():
        act = together("release", work, day=day, who=who, key=key, note=note)
        if not InspectorWord.objects.filter(act=act).exists():
            _write(act, deadout, verdict, inspector, written_on, words)
    return act


def refuse_others(who):
    """KeeperReleases for anybody but the keeper."""
    if role_of(who) != KEEPER:
        raise KeeperReleases()


def _refuse_unwritten(inspector, written_on, words, deadout):
    if not str(inspector).strip() or not str(words).strip() or written_on is None:
        raise NoWrittenWord()
    refuse_future(written_on)
    if deadout is not None and written_on < deadout.found_on:
        raise WordTooEarly(written_on=written_on, colony=deadout.colony, found_on=deadout.found_on)


def _still_held(line, here, deadout, verdict):
    """Why the pieces of a line may not go; None where they may."""
    lots = lots_at(here, line.part)
    ours = [lot for lot in lots if (lot.deadout and lot.deadout.pk) == (deadout and deadout.pk)]
    held = sum(lot.quantity for lot in ours)
    where = {"part": line.part, "location": here}
    if held < line.quantity:
        case = f"for {deadout.colony}" if deadout is not None else "by hand"
        return NotHeldForIt(wanted=line.quantity, held=held, case=case, **where)
    if line.part.kind == Kind.FRAME:
        return _comb_held(line, lots, ours, verdict, where)
    graver = [lot for lot in lots if lot not in ours and lot.reason in OF_A_CASE and not _cleared(lot)]
    if graver and not any(lot.reason in OF_A_CASE for lot in ours):
        return MixedHeld(why=graver[0].why, **where)
    return None


def _comb_held(line, lots, ours, verdict, where):
    """Frames and combs: whatever lies together at a place cannot be told apart, so the gravest case there decides."""
    cases = {deadout: case_of(deadout) for lot in lots for deadout in lot.cases}
    for deadout, case in cases.items():
        if case == "confirmed":
            return CombNeverReleased(colony=deadout.colony, **where)
    for deadout, case in cases.items():
        if case == "suspected":
            return CombWaits(colony=deadout.colony, **where)
    reached = [lot for lot in lots if lot.reason == Hold.Reason.REACHED and not _cleared(lot)]
    if reached and verdict != Verdict.CLEARED:
        return NotTreated(why=reached[0].why, **where)
    if any(lot not in ours for lot in reached):
        return MixedHeld(why=reached[0].why, **where)
    return None


def _cleared(lot):
    return lot.deadout is not None and case_of(lot.deadout) == "cleared"


def _released(line, here):
    return turned(
        part=line.part,
        quantity=line.quantity,
        source=here,
        target=here,
        was=Condition.HELD,
        becomes=Condition.SOUND,
        reason=Reason.RELEASED,
    )


def _write(act, deadout, verdict, inspector, written_on, words):
    InspectorWord.objects.create(
        act=act,
        deadout=deadout,
        verdict=verdict,
        inspector=str(inspector).strip(),
        written_on=written_on,
        words=str(words).strip(),
    )
