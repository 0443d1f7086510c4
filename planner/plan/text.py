"""The order as a plain text table for a terminal, at most 100 columns wide.

Takes a Report, gives one string: lines by supplier, sums, gap, gain over the rule of thumb, what stays open.
"""

from planner.after.telling import two_lines
from planner.plan.beliefs_text import belief_lines
from planner.plan.budget_text import budget_lines
from planner.plan.terminal import RULE, wrapped
from planner.plan.trial_text import bad_years_table, trial_table
from planner.plan.words import amount, day_words, number, places, sum_words

PIECE, PACKS, UNITS, PRICE, TOTAL, BY = 40, 7, 13, 11, 13, 11
INDENT = 6 * " "


def as_text(report, *, why=False):
    """`why`: also the reason under each line."""
    blocks = [wrapped(report.headline)]
    blocks += [_order(order, report.money, why) for order in report.orders]
    if report.orders:
        blocks.append(_sums(report))
    blocks.append(_standing(report))
    blocks += [
        block
        for block in (
            budget_lines(report),
            trial_table(report),
            bad_years_table(report),
            belief_lines(report),
            _after(report),
            _open(report),
            _cautions(report),
        )
        if block
    ]
    return "\n\n".join(blocks) + "\n"


def _row(piece, packs, units, price, total, order_by):
    piece = piece if len(piece) <= PIECE else piece[: PIECE - 1] + "…"
    return (
        f"{piece:<{PIECE}}{packs:>{PACKS}}{units:>{UNITS}}{price:>{PRICE}}{total:>{TOTAL}}  {order_by:>{BY}}"
    ).rstrip()


def _order(order, money, why):
    rows = [
        wrapped(f"{order.name}: order by {day_words(order.order_by)}, due {day_words(order.due_on)}"),
        _row("Piece", "Packs", "Units", "A pack", f"Total, {money}", "Can wait to"),
        RULE,
    ]
    for line in order.lines:
        rows.append(_line(line))
        rows += [_row(f"    {unit.name}", "", _units(unit), "", "", "") for unit in line.parts[1:]]
        if why:
            rows.append(wrapped(line.why.text, first=INDENT, further=INDENT))
    note = f" ({order.fee_note})" if order.fee_note else ""
    rows += [
        RULE,
        _foot("Goods", order.goods),
        _foot(f"Shipping{note}", order.fee),
        _foot("Sum", order.total),
    ]
    return "\n".join(rows)


def _line(line):
    first = line.parts[0]
    return _row(
        f"{line.number:>2}  {line.name}",
        number(line.packs),
        _units(first),
        f"{line.price:,.2f}",
        f"{line.cost:,.2f}",
        f"{line.order_by.day} {line.order_by:%b %Y}",
    )


def _units(part):
    return amount(part.units, part.unit)


def _foot(words, value):
    return f"{words:<{PIECE + PACKS + UNITS + PRICE}}{value:>{TOTAL},.2f}"


def _sums(report):
    rows = [_foot("All orders, shipping included", report.spend)]
    if report.budget is not None:
        rows.append(_foot("Budget", report.budget))
        rows.append(_foot("Left", report.budget - report.spend))
    return "\n".join(rows)


def _standing(report):
    standing = report.standing
    rows = [wrapped(standing.said)] if standing.said != report.headline else []
    if standing.worth is not None:
        worth = sum_words(standing.worth, report.money)
        bad = sum_words(standing.bad_year, report.money)
        rows.append(
            wrapped(
                f"Mean of {standing.seasons} seasons, gear left over counted at its worth: {worth}; "
                f"{bad} in the worst of twenty."
            )
        )
    rows += [wrapped(sentence) for sentence in standing.sentences]
    return "\n".join(rows)


def _open(report):
    rows = [wrapped(row.text) for row in report.no_offers]
    if report.later:
        cost = sum_words(report.later_spend, report.money)
        rows.append(wrapped(f"Bought in season as the year shows its need: about {cost} in the mean season."))
    for row in [row for row in report.shortages if row.left_out >= 1][:5]:
        rows.append(
            wrapped(
                f"Left out {_often(row.in_100)}: {number(row.left_out)} of {number(row.wanted)} {row.what}"
                f"{places(row.yards)}, worth {sum_words(row.lost, report.money)} a season."
            )
        )
    return "\n".join(rows)


def _after(report):
    return "\n".join(wrapped(said) for said in two_lines(report.after)) if report.after else ""


def _often(in_100):
    return "every season" if in_100 >= 100 else f"in {in_100} of 100 seasons"


def _cautions(report):
    return "\n".join(wrapped(f"{caution.head}. {caution.text}") for caution in report.cautions)
