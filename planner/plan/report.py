"""The whole report of a plan: the order by supplier, its reasons, what stays open, and how good it is.

Takes the operation, the assumptions, the sizing problem and its plan (and rivals judged by trial.py); gives a
Report. Solves nothing. A plan without an order (infeasible, out of time) gives a report that says so.
"""

from decimal import Decimal

from planner.plan.beliefs import assumption_rows
from planner.plan.budget import budget_section
from planner.plan.cautions import cautions
from planner.plan.computed import computed_rows
from planner.plan.facts import Facts
from planner.plan.lines import supplier_orders
from planner.plan.records import Report
from planner.plan.sections import later_lines, no_offers, requirement, shortages
from planner.plan.standing import headline, standing_of
from planner.plan.words import cents


def report_of(
    operation,
    assumptions,
    problem,
    plan,
    *,
    rivals=(),
    without_budget=None,
    trial=None,
    bad_years=None,
    nearby=None,
    beliefs=None,
    after=None,
):
    """`rivals`: orders judged on the same seasons; `without_budget`: the best order with no budget, if solved;
    `nearby`: the order's neighbours, if studied; `trial`, `bad_years`, `beliefs`: their sections, if tried;
    `after`: what follows the order, if planned."""
    facts = Facts(
        operation=operation,
        assumptions=assumptions,
        problem=problem,
        plan=plan,
        nearby=nearby,
        checked=beliefs,
    )
    standing = standing_of(facts, rivals, without_budget)
    if standing.worth is None:
        return _without_order(facts, standing)
    orders = supplier_orders(facts)
    later = later_lines(facts)
    return Report(
        day=operation.day,
        money=operation.money,
        budget=_budget(problem),
        spend=sum((order.total for order in orders), Decimal(0)),
        later_spend=sum((line.cost for line in later), Decimal(0)),
        order_by=min((order.order_by for order in orders), default=None),
        headline=headline(facts, orders, standing),
        standing=standing,
        orders=orders,
        shortages=shortages(facts),
        later=later,
        no_offers=no_offers(facts),
        requirement=requirement(facts),
        assumptions=assumption_rows(assumptions),
        cautions=cautions(facts, orders),
        trial=trial,
        bad_years=bad_years,
        beliefs=beliefs,
        budgets=budget_section(nearby, facts),
        computed=computed_rows(operation, assumptions, problem),
        after=after,
    )


def _without_order(facts, standing):
    return Report(
        day=facts.operation.day,
        money=facts.operation.money,
        budget=_budget(facts.problem),
        spend=Decimal(0),
        later_spend=Decimal(0),
        order_by=None,
        headline=standing.said,
        standing=standing,
        assumptions=assumption_rows(facts.assumptions),
        computed=computed_rows(facts.operation, facts.assumptions, facts.problem),
    )


def _budget(problem):
    return None if problem.budget is None else cents(problem.budget)
