"""HiGHS in this process: a PuLP problem handed over in one piece, solved as it is or with its whole columns fixed.

Takes a pulp.LpProblem to be maximised; gives an Answer with values by column, bound and prices. Knows no gear.
"""

from dataclasses import dataclass

import highspy
import numpy as np

SOLVED, STOPPED, INFEASIBLE, UNBOUNDED = "solved", "stopped", "infeasible", "unbounded"
LARGE = 1e29


@dataclass(frozen=True, kw_only=True)
class Answer:
    """What a solver found. `values` is None where it found nothing; prices only of a programme without whole columns."""

    status: str
    values: np.ndarray | None = None
    objective: float | None = None
    bound: float | None = None
    row_prices: np.ndarray | None = None
    column_prices: np.ndarray | None = None


@dataclass(frozen=True, kw_only=True)
class Matrix:
    """A PuLP problem as arrays; columns and rows keep PuLP's order."""

    columns: list
    rows: list
    costs: np.ndarray
    offset: float
    lower: np.ndarray
    upper: np.ndarray
    row_lower: np.ndarray
    row_upper: np.ndarray
    starts: np.ndarray
    indices: np.ndarray
    coefficients: np.ndarray
    whole: np.ndarray


def matrix_of(lp):
    """The problem's arrays, rows in one go."""
    columns = lp.variables()
    number = {id(column): at for at, column in enumerate(columns)}
    names, starts, row_lower, row_upper = [], [0], [], []
    indices: list[int] = []
    coefficients: list[float] = []
    for row in lp.constraints():
        names.append(row.name)
        indices.extend(number[id(column)] for column in row)
        coefficients.extend(row.values())
        starts.append(len(indices))
        bound = -row.constant
        row_lower.append(-highspy.kHighsInf if row.sense < 0 else bound)
        row_upper.append(highspy.kHighsInf if row.sense > 0 else bound)
    costs = np.zeros(len(columns))
    for column, cost in lp.objective.items():
        costs[number[id(column)]] = cost
    infinite = highspy.kHighsInf
    return Matrix(
        columns=columns,
        rows=names,
        costs=costs,
        offset=float(lp.objective.constant),
        lower=np.array([-infinite if c.lowBound is None else c.lowBound for c in columns], dtype=float),
        upper=np.array([infinite if c.upBound is None else c.upBound for c in columns], dtype=float),
        row_lower=np.array(row_lower, dtype=float),
        row_upper=np.array(row_upper, dtype=float),
        starts=np.array(starts, dtype=np.int32),
        indices=np.array(indices, dtype=np.int32),
        coefficients=np.array(coefficients, dtype=float),
        whole=np.array([column.cat == "Integer" for column in columns], dtype=bool),
    )


def solve(matrix, *, gap=0.0, seconds=60.0, fixed=None, relaxed=False, progress=None):
    """Solves; `fixed` holds the whole columns at given values, `relaxed` lets them be fractions."""
    solver = highspy.Highs()
    solver.setOptionValue("output_flag", False)
    for option, value in _options(gap, seconds).items():
        solver.setOptionValue(option, value)
    solver.passModel(_model(matrix, fixed, relaxed))
    if progress is not None and fixed is None and not relaxed and matrix.whole.any():
        solver.setCallback(_reporter(progress), None)
        solver.startCallback(highspy.cb.HighsCallbackType.kCallbackMipInterrupt)
    solver.run()
    return _answer(solver, matrix, pure=fixed is not None or relaxed or not matrix.whole.any())


def _options(gap, seconds):
    return {
        "time_limit": max(float(seconds), 0.01),
        "mip_rel_gap": max(gap * 0.98, 1e-9),
        "mip_abs_gap": max(gap * 0.98, 1e-9),
        "mip_feasibility_tolerance": 1e-7,
        "random_seed": 1,
    }


def _model(matrix, fixed, relaxed):
    model = highspy.HighsLp()
    model.num_col_, model.num_row_ = len(matrix.columns), len(matrix.rows)
    lower, upper = matrix.lower, matrix.upper
    if fixed is not None:
        lower = np.where(matrix.whole, fixed, lower)
        upper = np.where(matrix.whole, fixed, upper)
    model.col_cost_, model.offset_ = matrix.costs, matrix.offset
    model.col_lower_, model.col_upper_ = lower, upper
    model.row_lower_, model.row_upper_ = matrix.row_lower, matrix.row_upper
    model.a_matrix_.format_ = highspy.MatrixFormat.kRowwise
    model.a_matrix_.start_, model.a_matrix_.index_ = matrix.starts, matrix.indices
    model.a_matrix_.value_ = matrix.coefficients
    model.sense_ = highspy.ObjSense.kMaximize
    if fixed is None and not relaxed and matrix.whole.any():
        kinds = (highspy.HighsVarType.kContinuous, highspy.HighsVarType.kInteger)
        model.integrality_ = [kinds[whole] for whole in matrix.whole.tolist()]
    return model


def _reporter(progress):
    def report(kind, message, found, given, user):
        bound, primal = found.mip_dual_bound, found.mip_primal_bound
        if abs(bound) < LARGE:
            gap = None if abs(primal) > LARGE else abs(bound - primal) / max(1.0, abs(primal))
            progress("solving", bound, gap)

    return report


def _answer(solver, matrix, *, pure):
    status, info = solver.getModelStatus(), solver.getInfo()
    kinds = highspy.HighsModelStatus
    if status == kinds.kModelEmpty:
        return Answer(status=SOLVED, values=np.zeros(0), objective=matrix.offset, bound=matrix.offset)
    if status in (kinds.kInfeasible, kinds.kUnbounded, kinds.kUnboundedOrInfeasible):
        return Answer(status=INFEASIBLE if status == kinds.kInfeasible else UNBOUNDED)
    solved = status == kinds.kOptimal
    has_values = solved or info.primal_solution_status == 2
    if not has_values:
        bound = info.mip_dual_bound if not pure else None
        known = bound is not None and abs(bound) < LARGE
        return Answer(status=STOPPED, bound=bound if known else None)
    solution = solver.getSolution()
    objective = info.objective_function_value
    bound = objective if pure else info.mip_dual_bound
    if pure and not solved:
        bound = None
    priced = pure and solved
    return Answer(
        status=SOLVED if solved else STOPPED,
        values=np.array(solution.col_value),
        objective=objective,
        bound=bound,
        row_prices=np.array(solution.row_dual) if priced else None,
        column_prices=np.array(solution.col_dual) if priced else None,
    )
