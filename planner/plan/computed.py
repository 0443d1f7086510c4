"""Figures of the season that are worked out and never asked, in words, with where each comes from.

Takes the operation, the assumptions and the sizing problem; gives rows for the report. Works nothing out anew: it shows
what the drawing of seasons and the problem were made with.
"""

import datetime as dt
import math

from planner.plan.records import ComputedRow
from planner.plan.words import day_words, listed, percent, sum_words
from planner.requirement import prices, values
from planner.season import scenarios
from planner.season.calendar import day_of, piece_of
from planner.season.question import JUDGEMENT
from planner.season.survival import WINTER_CORRELATION

AFTER = "after the season"  # the group of what a piece is worth then
COLONIES = 100  # to say what a correlation does
SURVEYS = "implied by the confidence intervals of the loss surveys (Brodschneider 2018, Gray 2019, Lee 2015, Kulhanek 2017)"
OWN_WINTERS = "fitted to your own winters, held towards the loss surveys' figure; how strongly is judgement"
WAX = "Bogdanov, Beeswax; Whitcomb (1946): 8.4 lb of honey a lb of wax; by the boxes' inner volumes"
CROPS = "your best and worst crop, taken as those of ten years (order statistics of the normal)"


def computed_rows(operation, assumptions, problem):
    """Swings, the weight of bad years, what lying idle costs, and what each piece is worth after the season."""
    return (
        *_year(operation, assumptions),
        *_swings(assumptions),
        *_money(assumptions, problem),
        *_worths(operation, problem),
    )


def _year(operation, assumptions):
    """Where the 52 weeks end; flows that are on at the start are there at their beginning only."""
    windows = {window for yard in operation.yards for window in yard.windows}
    cut = sorted({w.name for w in windows if piece_of(assumptions.start, assumptions.weeks, w).gone_weeks})
    left = f"; what {listed(cut)} may bring again by then is left to the next order" if cut else ""
    last = day_of(assumptions.start, assumptions.weeks) - dt.timedelta(days=1)
    yield _row(
        "season",
        "The last day planned for",
        f"{day_words(last)}{left}",
        f"{assumptions.weeks} weeks from the day of the order",
    )


def _swings(assumptions):
    winter = assumptions.winter_correlation
    yield _row(
        "winters",
        "How far winters swing, all yards alike",
        _swing(winter),
        SURVEYS if winter == WINTER_CORRELATION else OWN_WINTERS,
    )
    for name, correlation in (
        ("How far a yard's winter strays from the year's", scenarios.YARD_CORRELATION),
        ("How far summers swing", scenarios.SUMMER_CORRELATION),
        ("How far the luck of splits swings", scenarios.SPLIT_CORRELATION),
    ):
        yield _row("winters", name, _swing(correlation), JUDGEMENT)
    strong, weak = (scenarios.HARDSHIP[strength] for strength in ("strong", "weak"))
    yield _row(
        "winters",
        "How hard a winter is for strong and weak colonies beside fair ones",
        f"{strong:g} and {weak:g} times as hard",
        JUDGEMENT,
    )
    sigma = scenarios.year_sigma(assumptions)
    yield _row(
        "flow",
        "How far years of flow swing",
        f"two years of three within {percent(1 - math.exp(-sigma))} below and {percent(math.exp(sigma) - 1)} above",
        CROPS,
    )


def _swing(correlation):
    times = 1 + (COLONIES - 1) * correlation
    return f"{correlation:.3g}: among {COLONIES} colonies luck varies {times:.1f} times as much as one by one"


def _money(assumptions, problem):
    weight = problem.bad_years.weight
    yield _row(
        "bad years",
        f"Weight of the worst {percent(problem.bad_years.share)} of seasons beside all of them",
        percent(weight) if weight else "none of their own",
        f"your answer to “Sooner ten short, or thirty idle?”; which weight for which answer is {JUDGEMENT}",
    )
    costs = {cost for part in problem.parts for cost in _costs(part.holding_cost)}
    yield _row(
        "worth",
        "What a piece costs that lies idle in store",
        "nothing a week: it loses worth over the season instead"
        if costs <= {0}
        else sum_words(max(costs), problem.money, cents_too=True) + " a week at most",
        JUDGEMENT,
    )
    yield _row(
        "worth",
        "Share of its cheapest price a piece is worth after the season",
        f"a year of its life off, at most {percent(prices.CAP)}; in a kit at most {percent(prices.IDLE_SHARE)} of it",
        JUDGEMENT,
    )
    for depth, pounds in values.DRAWING_HONEY_LB.items():
        yield _row("worth", f"Honey that a drawn {depth} comb costs", f"{pounds:g} lb", WAX)


def _costs(cost):
    return cost if isinstance(cost, list | tuple) else (cost,)


def _worths(operation, problem):
    names = operation.parts_by_code
    for part in problem.parts:
        if part.code in names and part.end_value:
            yield _row(
                AFTER,
                names[part.code].name,
                sum_words(f"{part.end_value:.2f}", problem.money, cents_too=True),
                "the cheapest way to get it, a year of its life off; the rule is judgement",
            )


def _row(group, name, value, source):
    return ComputedRow(group=group, name=name, value=value, source=source)
