"""What an act on bees did, in one sentence: the colonies by name, and the gear that went with them.

Takes an act and its movements; gives words. Prices are not told here. Changes nothing.
"""

from apiary.models import Colony, ColonyEvent
from inventory.gear import Reason
from inventory.models import Location, Sale, SaleReturn

Kind = ColonyEvent.Kind
SHOWN = 6  # tags told by name; of more their number

HEADS = {
    "split": "Split",
    "hive a nuc": "Nuc hived",
    "unite": "United",
    "requeen": "Requeened",
    "end": "Colony no more",
    "sell": "Sold",
    "bring back": "Brought back",
    "move colonies": "Colonies moved",
    "lose a yard": "Yard lost",
}


def tags_of(act, kind):
    """Tags of the colonies to which this happened in the act, as they are now."""
    events = ColonyEvent.objects.filter(act_key=act.key, kind=kind).order_by("id")
    return list(events.values_list("colony__tag", flat=True))


def listed(tags):
    """A1, A2 and A3; of many only how many."""
    if len(tags) > SHOWN:
        return f"{len(tags)} colonies"
    return " and ".join([", ".join(tags[:-1]), tags[-1]] if len(tags) > 1 else tags) or "no colony"


def _pieces(rows):
    number = sum(row.quantity for row in rows)
    return f"{number:,} piece" if number == 1 else f"{number:,} pieces"


def _split(act, rows):
    mothers = list(dict.fromkeys(tags_of(act, Kind.SPLIT)))
    daughters = tags_of(act, Kind.STARTED)
    combs = sum(row.quantity for row in rows if row.reason == Reason.PLACED and _between_hives(row))
    store = [row for row in rows if row.source.kind == Location.Kind.STORE]
    words = f"Split {listed(mothers)}: {listed(daughters)} started"
    words += f" with {combs} comb{'' if combs == 1 else 's'}"
    return f"{words}, {_pieces(store)} from the store of {store[0].source}." if store else f"{words}."


def _between_hives(row):
    return row.source.kind == row.target.kind == Location.Kind.COLONY


def _hived(act, rows):
    tags = tags_of(act, Kind.SET)
    home = [row for row in rows if row.target.kind == Location.Kind.STORE]
    colony = Colony.objects.select_related("hive_set").filter(tag__in=tags).first()
    where = colony.hive_set.name if colony else "a full set"
    return f"{listed(tags)} hived: {where}; {_pieces(home)} back in the store of {home[0].target}."


def _united(act, rows):
    gone, stays = tags_of(act, Kind.ENDED), tags_of(act, Kind.UNITED)
    words = [f"{listed(gone)} united with {listed(stays)}"]
    on = [row for row in rows if row.target.kind == Location.Kind.COLONY]
    home = [row for row in rows if row.target.kind == Location.Kind.STORE]
    words += [f"{_pieces(on)} on it"] if on else []
    words += [f"{_pieces(home)} to the store of {home[0].target}"] if home else []
    return f"{', '.join(words)}."


def _requeened(act, _rows):
    event = ColonyEvent.objects.filter(act_key=act.key, kind=Kind.REQUEENED).first()
    words = event.note.partition(":")[0] if event else "a new queen"
    return f"{listed(tags_of(act, Kind.REQUEENED))}: {words}."


def _ended(act, _rows):
    event = ColonyEvent.objects.filter(act_key=act.key, kind=Kind.ENDED)[0]
    why = Colony.Ended(event.note.partition(":")[0]).label
    words = "found dead" if why == Colony.Ended.DIED.label else why
    return f"{listed(tags_of(act, Kind.ENDED))} written down as {words}."


def _sold(act, rows):
    sale = Sale.objects.get(act_key=act.key)
    gone = [row for row in rows if row.target.kind == Location.Kind.SOLD]
    words = f"Sold {listed(tags_of(act, Kind.ENDED))} to {sale.buyer} with {_pieces(gone)}"
    owed = sum(line.quantity for line in sale.owed.all())
    if owed:
        words += f"; {owed} to come back by {sale.back_by:%-d %B %Y}"
    return f"{words}."


def _brought_back(act, rows):
    back = SaleReturn.objects.select_related("sale").get(act_key=act.key)
    if not rows:
        return f"{back.sale.buyer} brings nothing more: settled."
    return f"{back.sale.buyer} brought {_pieces(rows)} back, into the store of {rows[0].target}."


def _moved(act, _rows):
    event = ColonyEvent.objects.filter(act_key=act.key, kind=Kind.MOVED).select_related("yard")[0]
    return f"Moved {listed(tags_of(act, Kind.MOVED))} to {event.yard}, with their gear on them."


def _lost(act, rows):
    tags = tags_of(act, Kind.ENDED)
    lost = [row for row in rows if row.target.kind == Location.Kind.LOST]
    kept = [row for row in rows if row.target.kind == Location.Kind.STORE]
    words = [f"{listed(tags)} written down as lost" if tags else "A store written down as lost"]
    words += [f"{_pieces(lost)} gone"] if lost else []
    words += [f"{_pieces(kept)} saved into the store of {kept[0].target}"] if kept else []
    return f"{', '.join(words)}."


TELLERS = {
    "split": _split,
    "hive a nuc": _hived,
    "unite": _united,
    "requeen": _requeened,
    "end": _ended,
    "sell": _sold,
    "bring back": _brought_back,
    "move colonies": _moved,
    "lose a yard": _lost,
}
