"""What a line would be were a belief wrong: the second half of what it rests on.

Takes a bought line and the facts with the beliefs checked; gives one sentence, or "" where none was checked. Every
figure is of an order made for the other value.
"""

from dataclasses import replace
from decimal import Decimal

from planner.plan.moves import pack_of, packs_word
from planner.plan.words import number, sum_words


def with_beliefs(report, facts):
    """The report with the beliefs the facts hold as checked, each line with what it would be otherwise."""
    orders = tuple(
        replace(order, lines=tuple(_told_otherwise(line, facts) for line in order.lines))
        for order in report.orders
    )
    return replace(report, orders=orders, beliefs=facts.checked)


def _told_otherwise(line, facts):
    return replace(line, why=replace(line.why, otherwise=otherwise(line, facts)))


def otherwise(line, facts):
    """The answer that moves this line most, at the end where it moves it most."""
    checked = facts.checked
    if checked is None or not checked.rows:
        return ""
    found = [
        (abs(then - now), belief, end, now, then)
        for belief in checked.rows
        for end in belief.ends
        for now, then in [end.changes.get(line.offer, (0, 0))]
        if now != then
    ]
    if not found:
        tried = len(checked.rows)
        return f"No answer tried changes this line ({number(tried)} {'was' if tried == 1 else 'were'} tried)."
    _size, belief, end, now, then = max(found, key=lambda each: (each[0], each[2].regret, each[1].key))
    wide = f"Were it {end.words} instead of {belief.answered} ({belief.name})"
    return (
        f"{wide}, the best order would {_changed(now, then, pack_of(line.offer, facts))}{_cost(end, facts)}."
    )


def _changed(now, then, pack):
    noun = f" {packs_word(pack, abs(then - now))}".rstrip()
    if not then:
        return "not have this line at all"
    more = "more" if then > now else "fewer"
    return f"have {number(abs(then - now))}{noun} {more} of it, {number(then)} instead of {number(now)}"


def _cost(end, facts):
    """What this order, kept as it is, then gives away."""
    if end.regret <= Decimal("0.50"):
        return "; keeping it as it is would cost next to nothing"
    return f"; keeping this order would cost {sum_words(end.regret, facts.money)} a season"
