"""Plain columns and rows of a programme's part as HiGHS takes them, in one piece.

Takes columns, rows and money as planner.programme's blocks keep them; gives a HighsLp to be maximised, and a silent
solver that holds one.
"""

import highspy
import numpy as np


def model_of(part, constant=0.0, whole=False):
    """The part's HighsLp; `whole` says which columns are whole."""
    model, infinite = highspy.HighsLp(), highspy.kHighsInf
    model.num_col_, model.num_row_ = len(part.columns), len(part.rows)
    costs = np.zeros(len(part.columns))
    for column, money in part.money.items():
        costs[column.number] = money
    starts, indices, coefficients = [0], list[int](), list[float]()
    for _, terms, _, _ in part.rows:
        indices.extend(column.number for column in terms)
        coefficients.extend(terms.values())
        starts.append(len(indices))
    senses = np.array([sense for _, _, sense, _ in part.rows], dtype=int)
    bounds = np.array([bound for _, _, _, bound in part.rows], dtype=float)
    model.col_cost_, model.offset_ = costs, constant
    model.col_lower_ = np.array([_or(c.lowBound, -infinite) for c in part.columns], dtype=float)
    model.col_upper_ = np.array([_or(c.upBound, infinite) for c in part.columns], dtype=float)
    model.row_lower_ = np.where(senses < 0, -infinite, bounds)
    model.row_upper_ = np.where(senses > 0, infinite, bounds)
    model.a_matrix_.format_ = highspy.MatrixFormat.kRowwise
    model.a_matrix_.start_ = np.array(starts, dtype=np.int32)
    model.a_matrix_.index_ = np.array(indices, dtype=np.int32)
    model.a_matrix_.value_ = np.array(coefficients, dtype=float)
    model.sense_ = highspy.ObjSense.kMaximize
    if whole:
        kinds = (highspy.HighsVarType.kContinuous, highspy.HighsVarType.kInteger)
        model.integrality_ = [kinds[column.whole] for column in part.columns]
    return model


def solver_of(model):
    """A HiGHS of its own with this model; it prints nothing."""
    solver = highspy.Highs()
    solver.setOptionValue("output_flag", False)
    solver.passModel(model)
    return solver


def _or(bound, otherwise):
    return otherwise if bound is None else bound
