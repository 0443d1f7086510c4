"""Which budgets a curve is told at: round ones from the least that will do to well past what is of use.

Takes money; gives rising budgets, the problem's own among them. Solves nothing.
"""

import math

POINTS = 12
PAST = 1.25  # of the spend beyond which more money is of no use
ROUND = (1, 1.5, 2, 2.5, 3, 4, 5, 6, 8, 10)


def round_budgets(*, least, most, own=None, count=POINTS):
    """`count` budgets: from `least` (the least that serves every must-use) to past `most` (the spend without a
    budget); `own`, the problem's, takes the place of the one next to it."""
    top = max(PAST * most, own or 0.0, least + 1.0)
    step = _round_up((top - least) / (count - 1))
    first = step * math.ceil(least / step - 1e-9)
    found = [round(first + step * at, 2) for at in range(count)]
    if own is None or own in found or own < least:
        return found
    near = min(range(count), key=lambda at: abs(found[at] - own))
    return sorted([*found[:near], own, *found[near + 1 :]])


def _round_up(step):
    """The next round number."""
    size = 10.0 ** math.floor(math.log10(step))
    return next(size * by for by in ROUND if size * by >= step - 1e-9)
