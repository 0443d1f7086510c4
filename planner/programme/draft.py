"""The programme while it is being built: columns, rows and the objective, gathered before PuLP gets them.

Takes a problem; each family of constraints adds to it. A term is a column with its coefficient, kept in dicts.
"""

import pulp

from planner.programme.names import Names
from planner.programme.pace import paces
from planner.programme.record import Programme, Slack

SENSES = {"<=": pulp.LpConstraintLE, ">=": pulp.LpConstraintGE, "==": pulp.LpConstraintEQ}


def add(terms, column, coefficient):
    """Adds a term to terms in place."""
    if coefficient:
        terms[column] = terms.get(column, 0.0) + coefficient


def add_all(terms, more, factor=1.0):
    for column, coefficient in more.items():
        if coefficient and factor:
            terms[column] = terms.get(column, 0.0) + coefficient * factor


class Draft:
    """Where columns and rows are put. `ease` is None, "musts" or "limits": which side of a contradiction may give."""

    def __init__(self, problem, *, packs=None, ease=None):
        self.problem = problem
        self.packs = packs
        self.ease = ease
        self.lp = pulp.LpProblem("winter_order", pulp.LpMaximize)
        self.names = Names()
        self.programme = Programme(problem=problem, lp=self.lp)
        self.now_money = {}  # objective terms alike in every scenario
        self.own_money: list[dict] = [{} for _ in problem.scenarios]  # objective terms of one scenario
        self.constants = [0.0 for _ in problem.scenarios]
        self.penalties = {}
        self.worth = {part.code: _worth(part, problem.periods) for part in problem.parts}
        self.end_value = {part.code: part.end_value for part in problem.parts}
        self.paces = paces(self)
        self._nothing = None

    def column(self, kind, *codes, lowest=0.0, highest=None, whole=False):
        category = pulp.LpInteger if whole else pulp.LpContinuous
        return self.lp.add_variable(self.names.name(kind, *codes), lowest, highest, category)

    def choice(self, kind, *codes):
        """A yes or no column."""
        return self.column(kind, *codes, highest=1, whole=True)

    def row(self, family, *codes, terms, sense, bound):
        """A row `terms sense bound` with sense <=, >= or ==; gives its name."""
        if not all(terms.values()):
            terms = {column: coefficient for column, coefficient in terms.items() if coefficient}
        if not terms:
            if self._nothing is None:
                self._nothing = self.column("nothing", highest=0)
            terms = {self._nothing: 1.0}
        name = self.names.name(family, *codes)
        self.put(name, terms, sense, bound)
        self.programme.families[name] = family
        return name

    def put(self, name, terms, sense, bound):
        """Writes the row into PuLP's problem."""
        expression = pulp.LpAffineExpression(terms)
        self.lp.addConstraint(pulp.LpConstraint(e=expression, sense=SENSES[sense], name=name, rhs=bound))

    def slack(self, kind, scenario, what, *, weight):
        """A column by which a limit may be overstepped, where limits may give; else None."""
        if self.ease != "limits":
            return None
        column = self.column(f"over_{kind}", mark(scenario), len(self.programme.slacks))
        self.penalties[column] = -weight
        self.programme.slacks.append(Slack(kind=kind, scenario=scenario, what=what, column=column))
        return column

    def money(self, scenario, terms, factor=1.0):
        """Adds money earned by the terms to a scenario's objective, or to all alike (None)."""
        add_all(self.now_money if scenario is None else self.own_money[scenario], terms, factor)


def mark(scenario):
    """The scenario's part of a name: s0, s1 ..., or now."""
    return "now" if scenario is None else f"s{scenario}"


def _worth(part, periods):
    """worth[t]: end value less the holding cost from t on, of a unit that comes in period t and stays idle."""
    holding = part.holding_cost
    if not holding:
        return [part.end_value] * (periods + 1)
    costs = holding if isinstance(holding, tuple | list) else (holding,) * periods
    worth = [part.end_value] * (periods + 1)
    for period in range(periods - 1, -1, -1):
        worth[period] = worth[period + 1] - costs[period]
    return worth
