"""Plain records for the tests of reconciling: two stores, a hive, a few parts. All invented."""

import datetime as dt

from inventory.reconcile import Difference, Facts, Hive, Moved, Piece

DAY = dt.date(2025, 6, 10)
SHED, YARD, OTHER, HIVE = 1, 2, 3, 11
SHED_YARD, FERN, MILL = 101, 102, 103

PIECES = {
    piece.code: piece
    for piece in (
        Piece(code="box-medium-10", kind="box", depth="medium", width=10),
        Piece(code="box-medium-10-flat", kind="box", depth="medium", width=10, flat=True),
        Piece(code="box-medium-8", kind="box", depth="medium", width=8),
        Piece(code="comb-medium-honey", kind="frame", depth="medium", comb="drawn"),
        Piece(code="frame-medium-foundation", kind="frame", depth="medium", comb="foundation"),
        Piece(code="stand", kind="stand"),
        Piece(code="sugar", kind="feed"),
        Piece(code="glue", kind="consumable"),
    )
}


def difference(part, booked, counted, *, place=SHED, condition="sound"):
    return Difference(place=place, part=part, condition=condition, booked=booked, counted=counted)


def moved(part, quantity, source, target, *, act=1, days=-5, reason="moved", condition="sound"):
    return Moved(
        act=act,
        day=DAY + dt.timedelta(days=days),
        part=part,
        condition=condition,
        quantity=quantity,
        source=source,
        target=target,
        reason=reason,
    )


def hive(tag="F-01", **fields):
    usual = {"colony": 21, "place": HIVE, "yard": FERN, "tag": tag, "in_flow": True}
    return Hive(**{**usual, **fields})


def facts(**fields):
    stores = {SHED: SHED_YARD, YARD: FERN, OTHER: MILL}
    return Facts(day=DAY, yard_of=stores, pieces=PIECES, **fields)
