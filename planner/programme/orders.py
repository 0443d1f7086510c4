"""Orders of packs: how many may be ordered, at which price step, whole or not.

Takes offers; adds the packs' columns and rows of the families order_limit, whole_packs, all_units,
incremental and fixed_packs.
"""

from planner.programme.draft import add, mark
from planner.programme.record import Order

INFINITE = float("inf")


def order_periods(problem, offer, *, all_of_them=False):
    """Periods in which ordering can pay. Where nothing makes a later order cheaper, only the earliest landing stays:
    one price, no fee, no limit an order, no holding cost, no work on landing."""
    periods = [t for t in sorted(offer.order_periods) if t + offer.lead_periods < problem.periods]
    fees = any(_fees(problem, offer))
    plain = len(offer.prices) == 1 and offer.max_packs is None and not offer.work_minutes and not fees
    if (
        all_of_them
        or not plain
        or any(_is_held(part) for part in problem.parts if offer.parts.get(part.code))
    ):
        return periods
    return periods[:1]


def _fees(problem, offer):
    supplier = next(row for row in problem.suppliers if row.code == offer.supplier)
    return supplier.order_fee if isinstance(supplier.order_fee, tuple | list) else (supplier.order_fee,)


def _is_held(part):
    return any(part.holding_cost) if isinstance(part.holding_cost, tuple | list) else part.holding_cost > 0


def place_orders(draft, most, scenario):
    """Columns for here-and-now orders (scenario None) or one scenario's later ones."""
    when = "now" if scenario is None else "later"
    fixed = draft.packs if scenario is None else None
    orders = []
    for offer in draft.problem.offers:
        if offer.when != when:
            continue
        for period in order_periods(draft.problem, offer, all_of_them=fixed is not None):
            orders.append(_order(draft, most, offer, period, scenario))
    if fixed is not None:
        fixed_packs(draft, orders, fixed)
    return orders


def _order(draft, most, offer, period, scenario):
    tied = scenario is None or len(offer.prices) > 1 or any(_fees(draft.problem, offer))
    bound = most.packs(offer, period) if tied else INFINITE
    if draft.packs is not None and scenario is None:
        bound = max(bound, draft.packs.get((offer.code, period), 0))
    key, chosen = (mark(scenario), offer.code, period), {}
    if len(offer.prices) == 1:
        packs = {draft.column("packs", *key, whole=whole_packs(offer)): 1.0}
        cost = dict.fromkeys(packs, offer.prices[0].price)
    elif offer.price_rule == "all_units":
        packs, cost, chosen = all_units(draft, offer, key, bound)
    else:
        packs, cost = incremental(draft, offer, key, bound)
    order_limit(draft, offer, scenario, period, packs)
    order = Order(
        offer=offer, period=period, scenario=scenario, packs=packs, cost=cost, most=bound, chosen=chosen
    )
    count_money(draft, order)
    return order


def count_money(draft, order):
    """Price, worth of what lands and cost of work on landing, in the objective."""
    offer, work = order.offer, draft.problem.work
    worth = sum(n * draft.worth[part][order.landing] for part, n in offer.parts.items())
    worth -= offer.work_minutes / 60 * work.cost_per_hour
    draft.money(order.scenario, order.cost, -1.0)
    draft.money(order.scenario, order.packs, worth)


def whole_packs(offer):
    """Whole packs: packs of an offer that is `whole` are whole numbers.

    Has no price: half a pack is not for sale.
    """
    return offer.is_whole


def order_limit(draft, offer, scenario, period, packs):
    """Limit of one order: packs ≤ max_packs.

    Its price is the money saved if the supplier let us have one pack more in that order.
    """
    if offer.max_packs is None:
        return
    what = (offer.code, period)
    slack = draft.slack("order_limit", scenario, what, weight=1 / max(1.0, offer.max_packs))
    column = next(iter(packs))
    if slack is None and len(packs) == 1:
        column.upBound = offer.max_packs
        return
    terms = dict(packs)
    if slack is not None:
        add(terms, slack, -1.0)
    draft.row("order_limit", mark(scenario), *what, terms=terms, sense="<=", bound=offer.max_packs)


def all_units(draft, offer, key, bound):
    """Price steps for all packs of an order: from_k·chosen_k ≤ packs_k ≤ (from_{k+1} − 1)·chosen_k, one step chosen.

    Where packs may be fractions a step reaches up to the next one's start. All packs cost the chosen step's price.
    The price of a step's lower row is what its threshold costs: money saved if it began one pack sooner.
    """
    packs, cost, chosen = {}, {}, {}
    starts = [step.from_packs for step in offer.prices]
    for number, step in enumerate(offer.prices):
        last = number + 1 == len(offer.prices)
        top = bound if last else starts[number + 1] - (1 if offer.is_whole else 0)
        column = draft.column("packs", *key, f"step{number + 1}", whole=offer.is_whole)
        choice = draft.choice("step", *key, number + 1)
        packs[column], cost[column], chosen[choice] = 1.0, step.price, 1.0
        draft.row("all_units", "most", *key, number + 1, terms={column: 1, choice: -top}, sense="<=", bound=0)
        if number:
            least = {column: 1, choice: -step.from_packs}
            draft.row("all_units", "least", *key, number + 1, terms=least, sense=">=", bound=0)
    draft.row("all_units", "one", *key, terms=chosen, sense="<=", bound=1)
    return packs, cost, chosen


def incremental(draft, offer, key, bound):
    """Price steps for each pack by itself: step k+1 opens when step k is full, length_k·open_{k+1} ≤ packs_k ≤ length_k.

    The price of a row is the money saved if its step were one pack shorter or longer.
    """
    packs, cost = {}, {}
    before, full_at = None, 0.0
    starts = [step.from_packs - 1 for step in offer.prices]
    for number, step in enumerate(offer.prices):
        last = number + 1 == len(offer.prices)
        length = max(bound - starts[number], 0) if last else starts[number + 1] - starts[number]
        column = draft.column("packs", *key, f"step{number + 1}", highest=length, whole=offer.is_whole)
        packs[column], cost[column] = 1.0, step.price
        if number:
            opened = draft.choice("open", *key, number + 1)
            full = {before: 1, opened: -full_at}
            draft.row("incremental", "full", *key, number, terms=full, sense=">=", bound=0)
            most = {column: 1, opened: -length}
            draft.row("incremental", "most", *key, number + 1, terms=most, sense="<=", bound=0)
        before, full_at = column, length
    return packs, cost


def fixed_packs(draft, orders, fixed):
    """A given order: packs = given packs, for every here-and-now order; what is not named is not ordered.

    The price of a row is what one pack more in that order would earn, the rest of the order held.
    """
    known = {(order.offer.code, order.period) for order in orders}
    for (offer, period), packs in fixed.items():
        if packs and (offer, period) not in known:
            raise ValueError(f'no here-and-now order of offer "{offer}" can be placed in period {period}')
    for order in orders:
        key = (order.offer.code, order.period)
        draft.row("fixed_packs", *key, terms=order.packs, sense="==", bound=fixed.get(key, 0))
