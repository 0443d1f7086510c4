"""How far each point of a curve is known: settled, open, or too poor to be told as what its budget earns.

Takes the points, the gap asked for, the budgets shown and the order's own; gives the points marked. A point is measured
by what no order within its budget can be worth more than.
"""

from dataclasses import replace

SURE = 0.01  # of a point's worth: what may be missed where the point is settled, if not the gap asked for
UNSURE, FEW = (
    3,
    10.0,
)  # a point is poor that may miss a third of the most it could earn, and more than so much money


def marked(points, *, gap, shown, own):
    """{budget: point}, each told whether it is settled and whether it is poor; at its own budget the order never is."""
    first = min((money for money in shown if money in points), default=min(points, default=None))
    found = {}
    for money, point in points.items():
        missed, size = point.bound - point.objective, max(1.0, abs(point.objective))
        most = point.bound - points[first].objective
        poor = money != own and missed > max(gap * size, FEW, most / UNSURE)
        settled = not poor and missed <= max(SURE, gap) * size
        found[money] = replace(point, settled=settled, poor=poor)
    return found
