"""What an act on a deadout, held gear or moth care did, in one sentence.

Takes the act; gives words. Changes nothing.
"""

from inventory.deadouts.worth import own_movements, worth_of
from inventory.gear import Condition
from inventory.models import Hold


def pieces(number):
    return "1 piece" if number == 1 else f"{number:,} pieces"


def worked(act, _rows):
    """Worked deadout F-07: 12 pieces saved, 20 held back, 2 gone. 40 pieces elsewhere are held back with it."""
    deadout = getattr(act, "deadout", None)
    if deadout is None:
        return "Worked a deadout."
    worth = worth_of(deadout)
    words = [
        f"{pieces(worth.saved)} saved",
        f"{worth.held:,} held back",
        f"{worth.lost:,} scrapped, burnt or lost",
    ]
    told = f"Worked deadout {deadout.colony}: {', '.join(words)}."
    elsewhere = held_elsewhere(deadout)
    return told + (f" {pieces(elsewhere)} elsewhere held back with it." if elsewhere else "")


def held_elsewhere(deadout):
    """Pieces its suspicion holds back beyond its own hive, by the act that worked it and by words told since."""
    own = [row.pk for row in own_movements(deadout)]
    holds = Hold.objects.filter(deadout=deadout, movement__act__reversed_by__isnull=True)
    rows = holds.exclude(movement__in=own).values_list("movement__quantity", flat=True)
    return sum(rows)


def released(_act, rows):
    out = [row for row in rows if row.target.is_inside and row.condition == Condition.SOUND]
    place = f" at {out[0].target}" if out else ""
    return f"Released {pieces(sum(row.quantity for row in out))}{place} on the written word."


def word_told(act, rows):
    word = getattr(act, "inspector_word", None)
    if word is None:
        return "Wrote down an inspector's word."
    held = sum(row.quantity for row in rows if row.target.is_inside)
    told = f"Wrote down the word of {word.inspector} on {word.deadout.colony}: {word.get_verdict_display()}."
    return told + (f" {pieces(held)} held back with it." if held else "")


def cared(act, _rows):
    row = getattr(act, "moth_care", None)
    return f"Combs of {row.deadout.colony} cared for against wax moth." if row else "Cared for combs."


def come_off(act, rows):
    """(rows, words): the way over the bench left out for what came off a hive held back, and what is told of it."""
    if act.name in TELLERS:
        return rows, ""
    told: list = []
    held, whys = 0, dict[str, None]()
    for row in rows:
        hold = getattr(row, "hold", None)
        if hold is not None:
            row.source = told.pop().source
            held += row.quantity
            whys[hold.why] = None
        told.append(row)
    return told, f" {pieces(held)} held back: {'; '.join(whys)}." if held else ""


HEADS = {
    "deadout": "Deadout worked",
    "release": "Held gear released",
    "inspector's word": "Inspector's word",
    "moth care": "Care against wax moth",
}
TELLERS = {"deadout": worked, "release": released, "inspector's word": word_told, "moth care": cared}
