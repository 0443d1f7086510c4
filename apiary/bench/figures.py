"""A measured figure and its verdict: the line that `bench` prints.

Takes a value and a target such as ">= 8"; gives a JSON line. Measures nothing.
"""

import json
import re
from dataclasses import dataclass

TARGET = re.compile(r"^(>=|<=|>|<) (-?\d+(?:\.\d+)?(?:e-?\d+)?)$")


@dataclass(frozen=True, kw_only=True)
class Figure:
    bench: str
    figure: str
    value: float
    unit: str
    target: str

    def __post_init__(self):
        if not TARGET.match(self.target):
            raise ValueError(f'a target reads like ">= 8", got {self.target!r}')

    @property
    def is_met(self):
        sign, number = self.target.split(" ")
        limit = float(number)
        return {
            ">=": self.value >= limit,
            "<=": self.value <= limit,
            ">": self.value > limit,
            "<": self.value < limit,
        }[sign]

    def as_line(self):
        """One line of JSON; the value to five figures."""
        line = {
            "bench": self.bench,
            "figure": self.figure,
            "value": float(f"{self.value:.5g}"),
            "unit": self.unit,
            "target": self.target,
            "ok": self.is_met,
        }
        return json.dumps(line, ensure_ascii=False, allow_nan=False)
