"""Deadouts of the invented year: worked at once, in two goes, with combs held back, or still waiting.

Takes the Year, the colony and what was found; writes through the acts on deadouts and the ledger's salvage.
"""

from decimal import Decimal

from apiary.models import Colony
from inventory import ledger, stock
from inventory.deadouts.care import care
from inventory.deadouts.fates import is_comb
from inventory.deadouts.release import release, tell_verdict
from inventory.deadouts.work import work_deadout
from inventory.gear import Condition
from inventory.ledger import Line, Piece
from inventory.models import InspectorWord, Part
from inventory.yardwork.ending import end_colonies


def worked(year, colony, *, after, cause, brood_seen=True):
    """The hive is taken apart on one day; comb whose brood nobody looked at is held back. Gives the Deadout."""
    act = year.act(
        work_deadout,
        after=after,
        colony=colony,
        cause=cause,
        brood_seen=brood_seen,
        into=year.shed,
        pieces=_pieces(colony, hold_comb=not brood_seen),
    )
    return act.deadout


def salvaged(year, colony, *, after, note):
    """The bees' end was told first, the hive taken apart the day after."""
    waiting(year, colony, after=after, note=note)
    pieces = _pieces(colony, hold_comb=False)
    words = {"note": "brood looked at, no sign of disease"}
    year.act(ledger.salvage, after=after + 1, colony=colony, into=year.shed, pieces=pieces, **words)


def waiting(year, colony, *, after, note):
    """Found dead; the hive still stands there to be worked."""
    year.act(end_colonies, after=after, colonies=[colony], why=Colony.Ended.DIED, note=note)


def frozen(year, deadout, *, after):
    """Its combs in a chest freezer, a day longer than the moth's eggs need."""
    year.act(care, after=after, deadout=deadout, celsius=Decimal("-15.0"), hours=Decimal(24))


def released_on_word(year, deadout, *, after):
    """The inspector's word comes in writing, and what the deadout held back is sound again."""
    word = {
        "verdict": InspectorWord.Verdict.CLEARED,
        "inspector": "County inspector (invented)",
        "written_on": year.day(after),
        "words": "Looked at the brood combs: no foulbrood. (invented)",
        "deadout": deadout,
    }
    year.act(tell_verdict, after=after + 1, **word)
    held = [
        Line(gear.part, n) for gear, n in stock.on_hand(year.shed).items() if gear.condition == Condition.HELD
    ]
    year.act(release, after=after + 2, at=year.shed, lines=held, **word)


def _pieces(colony, *, hold_comb):
    parts = Part.objects.in_bulk(field_name="code")
    held = stock.on_colony(colony)
    return [_sorted(gear, n, hold_comb and is_comb(parts[gear.part].comb)) for gear, n in held.items()]


def _sorted(gear, pieces, hold):
    """Two old brood combs in ten are melted down, the rest goes back into the shed."""
    if hold:
        return Piece(part=gear.part, condition=gear.condition, held=pieces)
    old = pieces // 5 if gear.part.startswith("comb") else 0
    return Piece(part=gear.part, condition=gear.condition, sound=pieces - old, scrapped=old)
