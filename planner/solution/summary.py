"""A plan in a few readable lines: what to order now, what it costs, what it is worth.

Takes a Problem and its Plan; gives text.
"""

from planner.solution.records import INFEASIBLE, OPTIMAL, TIME_LIMIT, UNBOUNDED, WITHIN_GAP

STATUS = {
    OPTIMAL: "This is the best order there is.",
    WITHIN_GAP: "No order can be better by more than {gap:.3g} %.",
    TIME_LIMIT: "Time ran out: this is the best order found so far; {by}.",
    INFEASIBLE: "No order can serve what must be served.",
    UNBOUNDED: "No best order exists: something in the problem makes money without end.",
}
NOT_KNOWN = "how much better one could be is not known"
WIDE = 10  # a gap of more times the worth says nothing
SHORT_LINES = 8


def summary(problem, plan):
    """The text, without a line break at its end."""
    lines = [_status(plan)]
    if plan.reason:
        lines.append(f"Reason: {plan.reason}.")
    if plan.is_order:
        lines += [
            "",
            *_order_lines(problem, plan),
            "",
            *_money_lines(problem, plan),
            *_short_lines(problem, plan),
        ]
    lines.append(f"Solved by {plan.solver} in {plan.seconds:.1f} s.")
    return "\n".join(lines)


def _status(plan):
    known = plan.gap is not None and plan.gap < WIDE
    by = f"a better one could be worth up to {100 * plan.gap:.3g} % more" if known else NOT_KNOWN
    if plan.status == TIME_LIMIT and not plan.is_order:
        return "Time ran out before any order was found."
    return STATUS[plan.status].format(gap=100 * (plan.gap or 0), by=by)


def _order_lines(problem, plan):
    if not plan.here_and_now:
        return ["Order now: nothing."]
    rows = [("Order now", "period", "packs", "units", problem.money)]
    for line in plan.here_and_now:
        units = ", ".join(f"{n:g} {part}" for part, n in line.units.items())
        rows.append((line.offer, str(line.period), f"{line.packs:g}", units, f"{line.cost:,.2f}"))
    for fee in plan.fees:
        rows.append((f"fee of {fee.supplier}", str(fee.period), "", "", f"{fee.fee:,.2f}"))
    widths = [max(len(row[at]) for row in rows) for at in range(5)]
    return [_aligned(row, widths).rstrip() for row in rows]


def _aligned(row, widths):
    name, period, packs, units, money = row
    text = f"{name:<{widths[0]}}  {period:>{widths[1]}}  {packs:>{widths[2]}}"
    return f"{text}  {units:<{widths[3]}}  {money:>{widths[4]}}"


def _money_lines(problem, plan):
    budget = "" if problem.budget is None else f" of a budget of {problem.budget:,.2f}"
    count = len(problem.scenarios)
    expected = f"over {count} scenarios" if count > 1 else "in the one scenario"
    lines = [
        f"Spend: {plan.spend:,.2f} {problem.money}{budget}.",
        f"Worth {expected}: {plan.objective:,.2f} {problem.money}, costs taken off.",
    ]
    if plan.shadow_prices is not None and plan.shadow_prices.budget:
        lines.append(f"One {problem.money} more of budget would earn about {plan.shadow_prices.budget:.2f}.")
    return lines


def _short_lines(problem, plan):
    """Uses left short most, by expected units."""
    short: dict[str, tuple[float, float]] = {}
    for scenario, row in zip(problem.scenarios, plan.scenarios, strict=True):
        for line in row.short:
            units, odds = short.get(line.use, (0.0, 0.0))
            short[line.use] = units + scenario.probability * line.units, odds + scenario.probability
    if not short:
        return ["Every use is served in full."]
    worst = sorted(short.items(), key=lambda row: (-row[1][0], row[0]))
    lines = ["Left short (units expected, share of scenarios):"]
    lines += [f"  {use}: {units:.4g}, {100 * odds:.0f} %" for use, (units, odds) in worst[:SHORT_LINES]]
    if len(worst) > SHORT_LINES:
        lines.append(f"  and {len(worst) - SHORT_LINES} more uses.")
    return lines
