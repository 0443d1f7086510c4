"""Periods merged into stretches in which nothing changes but what recipes without lead make.

Takes what comes and goes of the parts those recipes touch; gives stretches (first, last). Exact: gear comes only at a
stretch's first period and goes only at its last, so runs spread over it evenly never run short.
"""


def stretches(periods, *, comes, goes, alone):
    """Stretches of 0..periods−1: `comes` and `goes` hold periods in which parts come and go; those in `alone` stand
    by themselves."""
    found, first = [], 0
    for period in range(periods):
        last = period + 1 == periods
        if last or period in goes or period in alone or period + 1 in comes or period + 1 in alone:
            found.append((first, period))
            first = period + 1
    return found
