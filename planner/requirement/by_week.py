"""The requirement week by week: pieces of each part wanted in each yard, and what the yard's store owns.

Takes an operation and its sizing problem; gives mean and high quantile over the scenarios. Gear on living colonies
is in use already and not asked for again.
"""

from dataclasses import dataclass

import numpy as np

from planner.requirement.season_gear import plain
from planner.requirement.tokens import TOKENS

HIGH = 0.9
ALL_YARDS = ""


@dataclass(frozen=True, kw_only=True)
class RequirementLine:
    """`yard` "" is all yards together. Kept pieces count while they are kept, spent ones in their week."""

    part: str
    yard: str
    mean: tuple[float, ...]
    high: tuple[float, ...]  # enough in nine scenarios of ten
    owned: int

    @property
    def peak_week(self):
        """The week of the highest requirement, the first of equals."""
        return int(np.argmax(self.high))


def by_week(operation, problem):
    """One line a part and yard, and one a part for all yards, in that order of parts."""
    wanted: dict = {}
    count = len(problem.scenarios)
    for number, scenario in enumerate(problem.scenarios):
        for use in scenario.uses:
            if use.value < 0 and not use.must and not use.keeps:
                continue
            spans = [(use.keeps, use.last), (use.spends, use.first)]
            for pieces, last in spans:
                for part, each in pieces.items():
                    if part in TOKENS:
                        continue
                    for yard in (ALL_YARDS, use.location):
                        table = wanted.setdefault((part, yard), np.zeros((count, problem.periods)))
                        table[number, use.first : last + 1] += each * use.units
    weights = np.array([scenario.probability for scenario in problem.scenarios])
    owned = _owned(operation)
    order = {part.code: number for number, part in enumerate(problem.parts)}
    return tuple(
        RequirementLine(
            part=part,
            yard=yard,
            mean=tuple((weights @ table).round(3).tolist()),
            high=tuple(np.quantile(table, HIGH, axis=0, method="higher").round(3).tolist()),
            owned=owned.get((part, yard), 0),
        )
        for (part, yard), table in sorted(wanted.items(), key=lambda item: (order[item[0][0]], item[0][1]))
    )


def _owned(operation):
    owned: dict = {}
    for line in operation.stock:
        if line.condition == "sound":
            for yard in (ALL_YARDS, line.yard):
                key = plain(line.part), yard
                owned[key] = owned.get(key, 0) + line.quantity
    return owned
