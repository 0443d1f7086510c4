"""Money limits: the fee of an order, waived from a spend on, and the two budgets.

Takes the orders placed; adds rows of the families order_fee, free_from, budget and later_budget.
"""

from planner.programme.draft import add, add_all, mark
from planner.programme.record import Fee


def fees(draft, orders, scenario):
    """Fee terms of all orders of one kind, by supplier and period."""
    by_order: dict[tuple, list] = {}
    for order in orders:
        by_order.setdefault((order.offer.supplier, order.period), []).append(order)
    suppliers = {supplier.code: supplier for supplier in draft.problem.suppliers}
    found = []
    for (code, period), placed in by_order.items():
        supplier = suppliers[code]
        fee = supplier.order_fee
        fee = fee[period] if isinstance(fee, tuple | list) else fee
        if fee and supplier.free_from != 0:
            terms = order_fee(draft, fee, code, period, scenario, placed)
            if supplier.free_from is not None:
                free_from(draft, supplier, fee, period, scenario, placed, terms)
            draft.money(scenario, terms, -1.0)
            found.append(Fee(supplier=code, period=period, scenario=scenario, terms=terms))
    return found


def order_fee(draft, fee, code, period, scenario, placed):
    """Fee of an order: packs ≤ most·placed for every offer of the supplier in the period; the fee is paid if placed.

    Where an offer has price steps the row reads: steps chosen ≤ placed, which is tighter.
    The price of a row is what the fee adds to a pack of that offer.
    """
    choice = draft.choice("placed", mark(scenario), code, period)
    for order in placed:
        terms = dict(order.chosen or order.packs)
        add(terms, choice, -1.0 if order.chosen else -order.most)
        draft.row("order_fee", mark(scenario), order.offer.code, period, terms=terms, sense="<=", bound=0)
    return {choice: fee}


def free_from(draft, supplier, fee, period, scenario, placed, terms):
    """Free delivery: spend ≥ free_from·free, free ≤ placed; the fee is waived if free. Takes the waiver off `terms`.

    The price of the spend row is the money saved if the threshold fell by one unit of money.
    """
    choice = next(iter(terms))
    free = draft.choice("free", mark(scenario), supplier.code, period)
    spend = {free: -supplier.free_from}
    for order in placed:
        add_all(spend, order.cost)
    key = (mark(scenario), supplier.code, period)
    draft.row("free_from", "spend", *key, terms=spend, sense=">=", bound=0)
    draft.row("free_from", "placed", *key, terms={free: 1, choice: -1}, sense="<=", bound=0)
    terms[free] = -fee


def _spend(orders, fees):
    terms: dict = {}
    for order in orders:
        add_all(terms, order.cost)
    for fee in fees:
        add_all(terms, fee.terms)
    return terms


def budget(draft, orders, fees):
    """Budget: here-and-now packs and fees ≤ budget.

    Its price is what one unit of money more would earn.
    """
    limit, terms = draft.problem.budget, _spend(orders, fees)
    if limit is None or not terms:
        return
    slack = draft.slack("budget", None, limit, weight=1 / max(1.0, limit))
    if slack is not None:
        add(terms, slack, -1.0)
    draft.programme.budget_row = draft.row("budget", terms=terms, sense="<=", bound=limit)


def later_budget(draft, scenario, orders, fees):
    """Later budget: a scenario's later packs and fees ≤ later_budget.

    Its price is what one unit of money more for later would earn in that scenario, times its probability.
    """
    limit, terms = draft.problem.later_budget, _spend(orders, fees)
    if limit is None or not terms:
        return
    slack = draft.slack("later_budget", scenario, limit, weight=1 / max(1.0, limit))
    if slack is not None:
        add(terms, slack, -1.0)
    name = draft.row("later_budget", mark(scenario), terms=terms, sense="<=", bound=limit)
    draft.programme.later_budget_rows[scenario] = name
