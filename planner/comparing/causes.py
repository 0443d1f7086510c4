"""Why an order differs from the one before: sentences from the books, the prices, the answers and the budget.

Takes two runs told as records; gives sentences, each with old and new figure. Weighs nothing: which cause moved which
line is not claimed.
"""

import datetime as dt
from decimal import Decimal

from planner.plan.words import day_words, listed, sum_words

MOST_NAMED = 8  # pieces or prices named one by one; the rest is counted


def causes_between(before, now):
    """All causes, the bees first."""
    return (
        *_days(before.books, now.books),
        *_bees(before.books, now.books),
        *_gear(before.books, now.books),
        *_prices(before.books, now.books),
        *_answers(before.report, now.report),
        *_budget(before.report, now.report),
    )


def _days(before, now):
    if not before or not now or before["day"] == now["day"]:
        return
    then, today = (dt.date.fromisoformat(books["day"]) for books in (before, now))
    yield f"The books are those of {day_words(today)} instead of {day_words(then)}."


def _bees(before, now):
    if not before or not now:
        return
    dead = sum(count for day, count in now["dead"] if before["day"] < day <= now["day"])
    if before["winter_ahead"] and not now["winter_ahead"]:
        came, expected = before["colonies"] - dead, round(before["colonies"] * before["survival_share"])
        yield (
            f"The winter is counted: {came} of {before['colonies']} colonies came through, "
            f"where {expected} were expected."
        )
    elif dead:
        yield f"{_counted(dead, 'colony', 'colonies')} died since."
    if made := now["splits_made"] - before["splits_made"]:
        verb = "counts" if abs(made) == 1 else "count"
        splits = _counted(abs(made), "split was", "splits were")
        yield f"{splits} made since and {verb if made > 0 else f'no longer {verb}'}."
    if sold := now["nucs_sold"] - before["nucs_sold"]:
        yield f"{_counted(abs(sold), 'nuc was', 'nucs were')} sold since."
    if before["colonies"] != now["colonies"]:
        yield f"{_counted(now['colonies'], 'colony', 'colonies')} live, {before['colonies']} before."


def _gear(before, now):
    """Orders that came, what is newly on the way, and what the books otherwise know more or fewer of."""
    if not before or not now:
        return
    names = before["parts"] | now["parts"]
    way = _differences(before["on_order"], now["on_order"])
    came = {part: -count for part, count in way.items() if count < 0}
    coming = {part: count for part, count in way.items() if count > 0}
    owned = _differences(before["owned"], now["owned"])
    other = _differences(came, owned)
    for pieces, words in (
        (came, "No longer on the way, received or closed: {}."),
        (coming, "Newly on the way, and not bought again: {}."),
        ({part: count for part, count in other.items() if count > 0}, "More in the books than before: {}."),
        ({part: -count for part, count in other.items() if count < 0}, "Fewer in the books than before: {}."),
    ):
        if pieces:
            yield words.format(_named(pieces, names))


def _differences(before, now):
    parts = sorted({*before, *now})
    found = {part: now.get(part, 0) - before.get(part, 0) for part in parts}
    return {part: count for part, count in found.items() if count}


def _named(pieces, names):
    rows = sorted(pieces.items(), key=lambda row: (-row[1], row[0]))
    said = [f"{count} × {names.get(part, part)}" for part, count in rows[:MOST_NAMED]]
    rest = len(rows) - MOST_NAMED
    return "; ".join([*said, f"{rest} other kinds"] if rest > 0 else said)


def _prices(before, now):
    if not before or not now:
        return
    names = before["offers"] | now["offers"]
    old, new = before["prices"], now["prices"]
    changed = [code for code in sorted(old.keys() & new.keys()) if old[code] != new[code]]
    for code in changed[:MOST_NAMED]:
        yield f"Price of {names[code]}: {_steps(new[code])}, {_steps(old[code])} before."
    if len(changed) > MOST_NAMED:
        yield f"{len(changed) - MOST_NAMED} other prices changed."
    if gone := sorted(old.keys() - new.keys()):
        yield f"No longer offered: {_few(names[code] for code in gone)}."
    if found := sorted(new.keys() - old.keys()):
        yield f"Newly offered: {_few(names[code] for code in found)}."


def _steps(steps):
    return " / ".join(
        f"{Decimal(price):,.2f}" + (f" from {packs}" if packs > 1 else "") for packs, price in steps
    )


def _few(words):
    said = list(words)
    rest = len(said) - MOST_NAMED
    return listed([*said[:MOST_NAMED], f"{rest} others"] if rest > 0 else said)


def _answers(before, now):
    old = {row.key: row for row in before.assumptions}
    for row in now.assumptions:
        if row.key in old and row.value != old[row.key].value:
            unit = f" {row.unit}" if row.unit else ""
            yield f"{row.ask} {row.value}{unit}, {old[row.key].value} before."


def _budget(before, now):
    if before.budget != now.budget:
        yield f"The budget is {_sum(now)}, {_sum(before)} before."


def _sum(report):
    return (
        "without limit" if report.budget is None else sum_words(report.budget, report.money, cents_too=True)
    )


def _counted(number, one, many):
    return f"{number} {one if number == 1 else many}"
