"""A season, runs and a report for tests of pages: an order of invented suppliers. All figures invented."""

import datetime as dt
from decimal import Decimal

from django.utils import timezone

from planner.models import Run, Season
from planner.plan.budget_records import BudgetPoint, BudgetSection, LessBudget, Move, PacksChanged
from planner.plan.json_form import as_json
from planner.plan.records import (
    AssumptionRow,
    Caution,
    ComputedRow,
    LaterLine,
    Line,
    Owned,
    PacksAt,
    PartUnits,
    Peak,
    Report,
    Rival,
    Shortage,
    Standing,
    SupplierOrder,
    Why,
)
from planner.plan.trial_records import BadYearsPoint, BadYearsSection, TrialRow, TrialSection, YardSection
from tests import makers

DAY = dt.date(2027, 1, 15)
SHORT = Shortage(what="third supers", wanted=40.0, left_out=3.2, lost=Decimal("64.00"), in_100=12)
IN_SEASON = LaterLine(
    offer="nf-medium-later",
    name="Medium box, in season",
    units=(PartUnits(part="box-medium-10", name="medium box", unit="piece", units=4),),
    cost=Decimal("120.00"),
    in_100=18,
)
ASSUMED = AssumptionRow(
    key="circuit_days",
    group="flow",
    ask="How often do you get round each yard?",
    value="14",
    unit="days",
    default="14",
    own=False,
    source="judgement",
)


def make_season(**fields):
    return Season.objects.create(
        **{"name": "Winter order 2027", "starts_on": DAY, "budget_cents": 450_000, **fields}
    )


def make_run(season=None, **fields):
    season = season or make_season()
    usual = {"day": season.starts_on, "asked_at": timezone.now(), "budget_cents": season.budget_cents}
    return Run.objects.create(season=season, **{**usual, **fields})


def make_done_run(season=None, report=None, **fields):
    """A run that is done, with a report whose offers are in the price lists."""
    report = report or make_report()
    suppliers = {order.supplier: order.name for order in report.orders}
    for code, name in suppliers.items():
        makers.make_supplier(code, name=name)
    for order in report.orders:
        for line in order.lines:
            parts = {part.part: part.units // line.packs for part in line.parts}
            supplier = makers.Supplier.objects.get(code=order.supplier)
            cents = int(line.price * 100)
            makers.make_offer(parts, supplier=supplier, code=line.offer, name=line.name, steps=((1, cents),))
    usual = {
        "status": Run.Status.DONE,
        "finished_at": timezone.now(),
        "gap_reached": 0.0008,
        "report": as_json(report),
        "message": report.headline,
    }
    return make_run(season, **{**usual, **fields})


def make_line(number, offer, name, part, packs, per_pack, price, *, peak=None, owned=(), unit="piece"):
    price = Decimal(price)
    units = packs * per_pack
    return Line(
        number=number,
        offer=offer,
        name=name,
        packs=packs,
        parts=(PartUnits(part=part, name=name.lower(), unit=unit, units=units),),
        price=price,
        cost=price * packs,
        bill=(PacksAt(packs=packs, price=price),),
        price_note="",
        order_by=dt.date(2027, 2, 26),
        order_by_why="three weeks on the road, first wanted in late March",
        due_on=dt.date(2027, 3, 19),
        why=Why(
            sentences=(f"Buy {units}: in 31 seasons of 100 Mill Race runs short in late May.",),
            owned=owned,
            peak=peak,
            short_in_100=31,
            short_words="late May",
            short_yards=("Mill Race",),
            beliefs=("This assumes 72 % come through.",),
            moves=(make_move(), make_move(step=-1)),
            otherwise="Were it 55 %, the best order would have 2 packs fewer of it.",
        ),
    )


def make_peak(**fields):
    usual = {"week": 19, "starts_on": dt.date(2027, 5, 28), "words": "late May"}
    figures = {
        "mean": 272,
        "low": 258,
        "high": 291,
        "served": 268,
        "returned": 6,
        "yards": ("Mill Race", "Upper Meadow"),
    }
    return Peak(**{**usual, **figures, **fields})


def make_order(supplier, name, lines, fee):
    goods = sum(line.cost for line in lines)
    return SupplierOrder(
        supplier=supplier,
        name=name,
        period=0,
        lines=tuple(lines),
        goods=goods,
        fee=Decimal(fee),
        fee_note=f"shipping {fee}" if Decimal(fee) else "shipping free from 1,500",
        total=goods + Decimal(fee),
        order_by=min(line.order_by for line in lines),
        due_on=max(line.due_on for line in lines),
    )


def northfork_lines():
    mediums = Owned(part="box-medium-10", name="medium box", sound=198, to_mend=14)
    frames = Owned(part="frame-medium", name="medium frame", sound=1500, on_order=200)
    return [
        make_line(
            1,
            "nf-medium",
            "Medium box, flat",
            "box-medium-10-flat",
            12,
            5,
            "71.00",
            peak=make_peak(),
            owned=(mediums,),
        ),
        make_line(
            2,
            "nf-frame",
            "Medium frame, bare",
            "frame-medium-flat",
            6,
            100,
            "115.00",
            owned=(frames,),
            peak=make_peak(mean=2160, low=2000, high=2400, returned=50),
        ),
    ]


def sandridge_lines():
    return [
        make_line(3, "sr-sheet", "Medium sheet", "foundation-medium", 12, 50, "71.00"),
        make_line(4, "sr-excluder", "Excluder", "excluder-10", 2, 10, "99.00"),
        make_line(
            5,
            "sr-sugar",
            "Sugar, 50 lb bag",
            "sugar",
            16,
            50,
            "31.50",
            unit="lb",
            peak=make_peak(week=None, starts_on=None, words="over the season", mean=1100, low=700, high=1400),
        ),
    ]


def make_report(**fields):
    """Two invented suppliers, five lines, within a budget of $4,500."""
    orders = (
        make_order("northfork", "Northfork Woodware (invented)", northfork_lines(), "95.00"),
        make_order("sandridge", "Sandridge Supply (invented)", sandridge_lines(), "0"),
    )
    spend = sum(order.total for order in orders)
    usual = {
        "day": DAY,
        "money": "USD",
        "budget": Decimal("4500.00"),
        "spend": spend,
        "later_spend": Decimal("120.00"),
        "order_by": dt.date(2027, 2, 26),
        "headline": f"5 lines from Northfork Woodware and Sandridge Supply for ${spend:,.2f}, shipping included.",
        "standing": make_standing(spend),
        "orders": orders,
        "shortages": (SHORT,),
        "later": (IN_SEASON,),
        "assumptions": (ASSUMED,),
        "computed": (
            ComputedRow(group="winters", name="How far summers swing", value="0.03", source="judgement"),
            ComputedRow(
                group="after the season", name="deep box", value="$17.40", source="a year of life off"
            ),
            ComputedRow(group="after the season", name="floor", value="$12.38", source="a year of life off"),
        ),
        "cautions": (
            Caution(head="Caution: lifting", text="A full deep weighs 80 to 90 lb. Lift with two."),
        ),
        "trial": make_trial(),
        "bad_years": make_bad_years(),
        "budgets": make_budgets(),
    }
    return Report(**{**usual, **fields})


def make_standing(spend):
    return Standing(
        status="within_gap",
        said="Proven within 0.08 %: no order from these prices is worth more than that above this one.",
        worth=Decimal("6520.00"),
        bad_year=Decimal("1210.00"),
        gap_share=0.0008,
        seconds=4.2,
        solver="highs",
        seasons=100,
        rivals=(
            Rival(
                name="the rule of thumb",
                how="a third more of everything, on the same money",
                spend=spend - 10,
                worth=Decimal("5340.00"),
                gain=Decimal("1180.00"),
                bad_year=Decimal("300.00"),
                packs={"nf-medium": 20},
            ),
        ),
        sentences=("Worth $1,180 a season more than the rule of thumb.",),
    )


def make_trial_row(key, name, over, low, high, *, spend="4074.00", seasons=300):
    return TrialRow(
        key=key,
        name=name,
        how=f"how {name} is found",
        spend=None if spend is None else Decimal(spend),
        worth=Decimal(5300 + over),
        worth_reach=Decimal(210),
        bad_year=Decimal(900 + over),
        over=Decimal(over),
        over_reach=Decimal(60),
        low=Decimal(low),
        high=Decimal(high),
        seasons=seasons,
    )


def make_trial(**fields):
    """Against the keeper's usual order, on 300 seasons; figures invented."""
    usual = {
        "seasons": 300,
        "against": "yours",
        "against_name": "your usual order",
        "rows": (
            make_trial_row("rule", "rule of thumb", -350, -1450, 850),
            make_trial_row("yours", "your usual order", 0, 0, 0, spend="4100.00"),
            make_trial_row("mean", "mean season only", 1100, -250, 2500),
            make_trial_row("ours", "this order", 1200, -200, 2650),
            make_trial_row("foresight", "knowing the future", 1650, 100, 3200, spend=None, seasons=60),
        ),
        "sentences": (
            "On 300 fresh seasons this order earns about $1,200 a season more than yours on the same money (19 "
            "seasons of 20 between $200 less and $2,650 more).",
            "Knowing the future would add at most $500 a season (tried on 60 of them).",
        ),
        "gap_most": Decimal(25),
        "gap_share": 0.0038,
        "by_yard": YardSection(
            seasons=60,
            pooled=Decimal(6510),
            by_yard=Decimal(6480),
            gap_share=0.0046,
            said="Hauling told yard by yard, this order is worth $6,480 a season.",
        ),
    }
    return TrialSection(**{**usual, **fields})


def make_bad_years(**fields):
    figures = ((0.0, 4074, 6520, 1210), (0.4, 3900, 6480, 1390), (0.95, 3300, 6210, 1560))
    usual = {
        "share": 0.1,
        "seasons": 100,
        "points": tuple(
            BadYearsPoint(
                weight=weight,
                spend=Decimal(spend),
                mean=Decimal(mean),
                bad_years=Decimal(worst),
                chosen=weight == 0.0,
            )
            for weight, spend, mean, worst in figures
        ),
        "sentences": ("Looking to bad years alone lifts the worst tenth of seasons by $350.",),
    }
    return BadYearsSection(**{**usual, **fields})


def make_move(**fields):
    """A pack of five more is left, one fewer kept."""
    step = fields.get("step", 1)
    usual = {
        "step": step,
        "cost": Decimal("71.00") * step,
        "earned": Decimal("40.00") if step > 0 else Decimal("-113.00"),
        "over_budget": Decimal(0),
        "can_be": True,
        "head": f"One pack of 5 {'more' if step > 0 else 'fewer'}",
        "said": "costs $71 and should earn $40, so leave it"
        if step > 0
        else "saves $71 and loses $113, so keep it",
    }
    return Move(**{**usual, **fields})


def make_budgets(**fields):
    """Twelve budgets from nothing to $5,500, the order's own of $4,500 among them."""
    gains = (0, 1450, 2700, 3750, 4600, 5300, 5850, 6200, 6420, 6520, 6560, 6570)
    points = tuple(
        BudgetPoint(
            budget=Decimal(500 * at),
            spend=Decimal(490 * at),
            gain=Decimal(gain),
            most=Decimal(gain + 6),
            chosen=at == 9,
            knee=at == 6,
        )
        for at, gain in enumerate(gains)
    )
    usual = {
        "seasons": 100,
        "mark": Decimal("4500.00"),
        "points": points,
        "next_money": Decimal("100.00"),
        "next_earns": Decimal("41.00"),
        "price": 0.38,
        "less": LessBudget(
            budget=Decimal("4200.00"),
            less=Decimal("300.00"),
            lost=Decimal("160.00"),
            changes=(
                PacksChanged(
                    offer="nf-medium",
                    name="Medium box, flat",
                    before=12,
                    after=8,
                    said="drop 4 packs of 12",
                ),
                PacksChanged(
                    offer="sr-sugar", name="Sugar, 50 lb bag", before=16, after=17, said="take 1 pack more"
                ),
            ),
            said="With $300 less to spend, drop from 1 line (and take more of 1) and lose $160 a season.",
        ),
        "sentences": (
            "The next $100 would earn $41 a season on top of what it costs.",
            "The curve bends at $3,000: up to there $100 more earn about $195 a season, beyond it about $29.",
            "With $300 less to spend, drop from 1 line (and take more of 1) and lose $160 a season.",
        ),
    }
    return BudgetSection(**{**usual, **fields})
