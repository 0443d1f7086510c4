"""Reads a problem file: JSON text or its object in, a Problem out.

Raises Faults that lists every fault with its JSON path; nothing is guessed, nothing half read.
Opens no file and solves nothing.
"""

import json

from planner.sizing import forms
from planner.sizing.faults import Checks, Faults, RepeatedKeys, shown
from planner.sizing.records import Problem


def read(text):
    """The Problem a problem file's text says."""
    try:
        data = json.loads(text, object_pairs_hook=_object)
    except json.JSONDecodeError as error:
        raise Faults([f"line {error.lineno}, column {error.colno}: not JSON: {error.msg}"]) from None
    except RecursionError:
        raise Faults(["not a problem file: nested too deeply"]) from None
    except ValueError:
        raise Faults(["not a problem file: it holds a number of thousands of digits"]) from None
    return problem_of(data)


def problem_of(data):
    """The Problem that a JSON object says."""
    checks = Checks()
    if not isinstance(data, dict):
        raise Faults([f"the file must hold an object, got {shown(data)}"])
    known = forms.known_codes(data)
    problem = forms.record(checks, "", data, forms.PROBLEM, known)
    if isinstance(problem, Problem):
        _check_whole_uses(checks, problem)
    if checks.messages:
        raise Faults(checks.messages)
    return problem


def _object(pairs):
    table = dict(pairs)
    if len(table) == len(pairs):
        return table
    keys = [key for key, _ in pairs]
    marked = RepeatedKeys(table)
    marked.repeated = tuple(key for key in table if keys.count(key) > 1)
    return marked


def _check_whole_uses(checks, problem):
    """Whole uses know one scenario only, and their must-uses are whole."""
    if not problem.whole_uses:
        return
    if len(problem.scenarios) > 1:
        checks.note("whole_uses", f"needs a single scenario, got {len(problem.scenarios)}")
    for number, scenario in enumerate(problem.scenarios):
        for at, use in enumerate(scenario.uses):
            if use.must and not float(use.units).is_integer():
                where = f"scenarios[{number}].uses[{at}].units"
                checks.note(where, f"must be a whole number with whole_uses, got {use.units:g}")
