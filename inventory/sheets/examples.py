"""An invented operation of two yards: a row or two for every sheet, to show how each is filled in.

Takes nothing; gives records. Every name in it is invented; nothing of it is read as data.
"""

import datetime as dt
from decimal import Decimal

from inventory.gear import Condition
from inventory.sheets.records import (
    ColonyRow,
    CountedRow,
    CountRow,
    FlowRow,
    GearRow,
    KeeperRow,
    Known,
    KnownSet,
    OfferRow,
    Sheet,
    SupplierRow,
    WinterRow,
    YardRow,
)

KEEPER = KeeperRow(name="Example keeper (invented)", address="1 Example Lane", region="north")
YARDS = (
    YardRow(code="shed", name="Shed", is_shed=True),
    YardRow(
        code="mill-field",
        name="Mill Field (invented)",
        stands=16,
        drive_minutes=20,
        miles=Decimal("11.5"),
        gate="4711",
        emergency="Mill Road 3, second gate",
        visit_every_days=10,
    ),
)
FLOWS = (
    FlowRow(yard="mill-field", name="Clover", first_week=24, last_week=29, gain_lb=Decimal(60)),
    FlowRow(yard="mill-field", name="Asters", first_week=35, last_week=39, gain_lb=Decimal("17.5")),
)
COLONIES = (
    ColonyRow(tag="M-01", yard="mill-field", hive_set="two-deeps-10", strength="strong", supers=2),
    ColonyRow(
        tag="M-02",
        yard="mill-field",
        hive_set="one-deep-10",
        origin="split",
        started_on=dt.date(2026, 5, 14),
        mother="M-01",
    ),
)
GEAR = (
    GearRow(yard="shed", part="box-medium-10", quantity=42),
    GearRow(yard="shed", part="box-medium-10", condition=Condition.TO_MEND.value, quantity=5),
    GearRow(yard="mill-field", part="frame-medium-foundation", quantity=40),
)
SUPPLIERS = (
    SupplierRow(
        code="example",
        name="Example Joinery (invented)",
        order_fee=Decimal(80),
        free_from=Decimal(2000),
    ),
)
OFFERS = (
    OfferRow(
        code="example-box",
        supplier="example",
        name="Medium boxes in pieces, 5",
        parts={"box-medium-10-flat": 5},
        prices=((1, Decimal("70.00")), (10, Decimal("64.50"))),
        open_until=dt.date(2027, 1, 31),
    ),
    OfferRow(
        code="example-kit",
        supplier="example",
        name="Floor and cover",
        parts={"floor-10": 1, "cover-10": 1},
        prices=((1, Decimal("39.00")),),
    ),
)
WINTERS = (
    WinterRow(autumn=2023, went_in=12, came_out=9),
    WinterRow(autumn=2024, yard="mill-field", went_in=10, came_out=6),
)
COUNTS = (
    CountRow(
        yard="mill-field",
        day=dt.date(2026, 10, 3),
        lines=(
            CountedRow(part="box-medium-10", quantity=41),
            CountedRow(tag="M-01", part="box-medium-10", quantity=2),
        ),
    ),
)


def example():
    """The whole workbook."""
    return Sheet(
        keeper=KEEPER,
        yards=YARDS,
        flows=FLOWS,
        colonies=COLONIES,
        gear=GEAR,
        suppliers=SUPPLIERS,
        offers=OFFERS,
        winters=WINTERS,
    )


def example_names():
    """Names of the few parts and sets the example speaks of."""
    return Known(
        parts={
            "box-medium-10": "medium box, 10 frames",
            "box-medium-10-flat": "medium box, 10 frames, in pieces",
            "frame-medium-foundation": "medium frame with foundation",
            "floor-10": "floor, 10 frames",
            "cover-10": "telescoping cover, 10 frames",
        },
        sets={
            "two-deeps-10": KnownSet(name="two deeps, 10 frames", width=10),
            "one-deep-10": KnownSet(name="one deep, 10 frames", width=10),
        },
    )
