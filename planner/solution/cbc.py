"""The CBC that comes with PuLP, in its own process: the fall-back and the cross-check.

Takes a PuLP problem to be maximised and its Matrix; gives an Answer like highs.py. Of CBC's log only the status and,
with preprocessing off, the bound are read: objective values it prints can be false.
"""

import os
import re
import tempfile
import warnings

import numpy as np
import pulp

from planner.solution.highs import INFEASIBLE, SOLVED, STOPPED, UNBOUNDED, Answer

BOUND = re.compile(r"^Upper bound:\s+(\S+)", re.M)


def solve(lp, matrix, *, gap=0.0, seconds=60.0, relaxed=False):
    """Solves the problem; `relaxed` lets whole columns be fractions."""
    with tempfile.TemporaryDirectory(prefix="cbc-") as folder, warnings.catch_warnings():
        warnings.simplefilter("ignore")
        log = os.path.join(folder, "log")
        solver = pulp.COIN_CMD(
            path=pulp.apis.coin_api.pulp_cbc_path,
            msg=False,
            mip=not relaxed,
            timeLimit=max(seconds, 0.1),
            gapRel=gap * 0.98,
            gapAbs=gap * 0.98,
            options=["preprocess off"],
            logPath=log,
        )
        solver.tmpDir = folder
        status = _run(lp, solver)
        text = _read(log)
    return _answer(lp, matrix, status, text, gap=gap, pure=relaxed or not matrix.whole.any())


def _run(lp, solver):
    try:
        lp.solve(solver)
    except pulp.PulpSolverError:
        return None
    return lp.sol_status


def _read(log):
    if not os.path.exists(log):
        return ""
    with open(log, encoding="utf-8", errors="replace") as file:
        return file.read()


def _answer(lp, matrix, status, text, *, gap, pure):
    """What came out. PuLP's status and the log's verdict are both asked: each misses cases the other tells."""
    if status is None:
        return Answer(status=STOPPED)
    said = text.lower()
    solved = "optimal solution found" in said or "optimal objective" in said
    verdict = said.split("result -")[-1] if "result -" in said else said if pure else ""
    if status == pulp.LpSolutionInfeasible or ("infeasible" in verdict and not solved):
        return Answer(status=INFEASIBLE)
    if status == pulp.LpSolutionUnbounded or ("unbounded" in said and not solved):
        return Answer(status=UNBOUNDED)
    if status == pulp.LpSolutionNoSolutionFound:
        return Answer(status=STOPPED)
    values = np.array([column.varValue or 0.0 for column in matrix.columns])
    objective = float(matrix.costs @ values) + matrix.offset
    bound = _bound(text, objective, matrix.offset, solved=solved, gap=gap, pure=pure)
    return Answer(status=SOLVED if solved else STOPPED, values=values, objective=objective, bound=bound)


def _bound(text, objective, offset, *, solved, gap, pure):
    """The proven bound, or None; one below the objective is not believed."""
    if pure:
        return objective if solved else None
    printed = BOUND.findall(text)
    if printed and float(printed[-1]) + offset >= objective - 1e-6 * max(1.0, abs(objective)):
        return max(float(printed[-1]) + offset, objective)
    return objective + gap * max(1.0, abs(objective)) if solved else None
