"""Building the pooled programme and handing it over, the product's way and the plain way of PuLP.

Takes an instance; gives seconds of both. The plain way is the same code with each row made of an lpSum over products,
and PuLP's own transfer to HiGHS, column by column and row by row.
"""

import highspy
import pulp

from apiary.bench.measuring import timed
from planner.programme import build
from planner.solution import highs


def building(*, instance):
    """Seconds of either way, working out the rows' terms included and not; and how many rows both made."""
    problem = instance.problem()
    programme, whole = timed(lambda: build(problem))
    matrix, gathering = timed(lambda: highs.matrix_of(programme.lp))
    _, handing = timed(lambda: hand_over(matrix))
    dicts, plain = Copy(programme.lp), Copy(programme.lp)
    _, of_dicts = timed(dicts.rows_of_dicts)
    _, of_sums = timed(plain.rows_of_sums)
    _, stock = timed(lambda: pulp.HiGHS(msg=False).buildSolverModel(plain.fresh()))
    assert len(plain.lp.constraints()) == len(dicts.lp.constraints()) == len(matrix.rows)
    terms = max(whole - of_dicts, 0.0)
    return {
        "rows": len(matrix.rows),
        "product": whole + gathering + handing,
        "plain": terms + of_sums + stock,
        "product_rows": of_dicts + gathering + handing,
        "plain_rows": of_sums + stock,
    }


class Copy:
    """The same columns in a problem of their own, and the rows' terms, ready to be written again."""

    def __init__(self, lp):
        self.lp = pulp.LpProblem("copy", lp.sense)
        columns = {
            id(column): self.lp.add_variable(column.name, column.lowBound, column.upBound, column.cat)
            for column in lp.variables()
        }
        self.rows = [
            (row.name, {columns[id(column)]: n for column, n in row.items()}, row.sense, -row.constant)
            for row in lp.constraints()
        ]
        objective = {columns[id(column)]: n for column, n in lp.objective.items()}
        self.lp.setObjective(pulp.LpAffineExpression(objective, constant=lp.objective.constant))

    def rows_of_dicts(self):
        for name, terms, sense, bound in self.rows:
            expression = pulp.LpAffineExpression(terms)
            self.lp.addConstraint(pulp.LpConstraint(e=expression, sense=sense, name=name, rhs=bound))

    def rows_of_sums(self):
        for name, terms, sense, bound in self.rows:
            total = pulp.lpSum(n * column for column, n in terms.items())
            if sense == pulp.LpConstraintLE:
                self.lp += total <= bound, name
            elif sense == pulp.LpConstraintGE:
                self.lp += total >= bound, name
            else:
                self.lp += total == bound, name

    def fresh(self):
        """The problem with an empty HiGHS to be filled by PuLP's own transfer."""
        self.lp.solverModel = highspy.Highs()
        self.lp.solverModel.setOptionValue("output_flag", False)
        return self.lp


def hand_over(matrix):
    """The whole programme to HiGHS in one piece."""
    model, kinds = highspy.HighsLp(), (highspy.HighsVarType.kContinuous, highspy.HighsVarType.kInteger)
    model.num_col_, model.num_row_ = len(matrix.columns), len(matrix.rows)
    model.col_cost_, model.offset_ = matrix.costs, matrix.offset
    model.col_lower_, model.col_upper_ = matrix.lower, matrix.upper
    model.row_lower_, model.row_upper_ = matrix.row_lower, matrix.row_upper
    model.a_matrix_.format_ = highspy.MatrixFormat.kRowwise
    model.a_matrix_.start_, model.a_matrix_.index_ = matrix.starts, matrix.indices
    model.a_matrix_.value_ = matrix.coefficients
    model.sense_ = highspy.ObjSense.kMaximize
    model.integrality_ = [kinds[whole] for whole in matrix.whole.tolist()]
    solver = highspy.Highs()
    solver.setOptionValue("output_flag", False)
    solver.passModel(model)
    return solver
