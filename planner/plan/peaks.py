"""The week in which most of a part is in use, how much in most seasons, where, and what deadouts give back by then.

Takes the facts of a plan and a part; gives a Peak, or None where the season asks for none of it.
"""

from planner.plan.needs import quantile
from planner.plan.records import Peak
from planner.plan.words import part_of_month


def peak_of(code, facts):
    """Of what is used up the whole season counts, of what is kept the week with most in use in the mean season."""
    chain, needs, weights = facts.chain(code), facts.needs, facts.flows.weights
    yards = needs.asked_by_yard(chain)
    taken = facts.used_in_making(code)
    asked = sum(yards.values(), needs.blank()) + taken
    mean = weights @ asked
    if not mean.any():
        return None
    spent = needs.only_spent(chain)
    week = int(mean.argmax())
    there = {yard: float(weights @ pieces[:, week]) for yard, pieces in yards.items() if yard != facts.shed}
    tops = asked.max(axis=1)
    served = (needs.served(chain) + taken).max(axis=1)
    return Peak(
        week=None if spent else week,
        starts_on=None if spent else facts.day(week),
        words="over the season" if spent else part_of_month(facts.day(week)),
        mean=round(float(weights @ tops)),
        low=round(quantile(tops, weights, 0.1)),
        high=round(quantile(tops, weights, 0.9)),
        served=round(float(weights @ served)),
        returned=round(float(weights @ needs.arrived(chain)[:, week])),
        yards=tuple(
            facts.yard_names.get(yard, yard)
            for yard in sorted(there, key=lambda yard: (-there[yard], yard))
            if there[yard] > 0
        ),
    )
