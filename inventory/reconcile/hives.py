"""Gear between a store and its hives: supers put on or pulled and not booked, deadouts whose gear was carried off.

Takes what differs and the Facts; gives Explanations.
"""

from collections import defaultdict

from inventory.reconcile.records import Explanation, Likely

LEAST = 0.8  # of a box's width: eight spaced combs in a ten-frame super, the fewest that are usual


def supers(rows, facts):
    """Boxes and frames of one depth in super proportions: missing while hives in flow lack a super, or more while
    hives have one booked."""
    found = []
    for place in dict.fromkeys(row.place for row in rows if facts.is_store(row.place)):
        for sign, likely in ((-1, Likely.SUPER_UP), (1, Likely.PULLED)):
            gone = [row for row in rows if row.place == place and row.gap * sign > 0]
            for boxes in [row for row in gone if _is_super_box(row, facts)]:
                frames = _frames(boxes, gone, facts)
                hives = _candidates(facts, boxes, sign) if frames else ()
                if hives:
                    pieces = tuple((row.part, row.condition, abs(row.gap)) for row in (boxes, *frames))
                    found.append(Explanation(likely=likely, place=place, pieces=pieces, colonies=hives))
    return found


def _is_super_box(row, facts):
    piece = facts.pieces.get(row.part)
    return piece is not None and piece.kind == "box" and not piece.flat and row.condition == "sound"


def _frames(boxes, gone, facts):
    """The frames of that depth that differ the same way, if together they fill the boxes; else none."""
    box = facts.pieces[boxes.part]
    frames = [
        row
        for row in gone
        if row.condition == "sound"
        and (piece := facts.pieces.get(row.part)) is not None
        and (piece.kind, piece.depth, piece.flat) == ("frame", box.depth, False)
    ]
    number, most = sum(abs(row.gap) for row in frames), abs(boxes.gap) * (box.width or 0)
    return frames if frames and LEAST * most <= number <= most else []


def _candidates(facts, boxes, sign):
    """Colonies, by tag, that may have them or had them: as wide, alive, in flow without a super, or with one."""
    width = facts.pieces[boxes.part].width
    hives = [hive for hive in facts.near(boxes.place) if not hive.ended and hive.width == width]
    hives = [hive for hive in hives if (hive.supers if sign > 0 else hive.in_flow and not hive.supers)]
    return tuple(hive.colony for hive in sorted(hives, key=lambda hive: hive.tag))


def deadouts(rows, facts):
    """More in a store while an ended colony still has as much booked on it."""
    pieces = defaultdict(list)
    for row in rows:
        if row.gap <= 0 or not facts.is_store(row.place):
            continue
        for hive in facts.near(row.place):
            booked = sum(quantity for part, _, quantity in hive.gear if part == row.part) if hive.ended else 0
            if booked:
                pieces[row.place, hive].append((row.part, row.condition, min(booked, row.gap)))
    return [
        Explanation(
            likely=Likely.DEADOUT,
            place=place,
            pieces=tuple(told),
            source=hive.place,
            colonies=(hive.colony,),
        )
        for (place, hive), told in pieces.items()
    ]
