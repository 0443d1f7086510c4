"""Published cases with their source: takes a case's name, gives its data and what was published for it.

Reads data/*.json beside this file. `figure` is the published value with its tolerance where the source prints one,
else our own answer (found by a second method, as the case's provenance says) to 1e-6 of itself.
"""

import functools
import json
from dataclasses import dataclass
from pathlib import Path

import pytest

DATA = Path(__file__).parent / "data"


@dataclass(frozen=True, kw_only=True)
class Case:
    name: str
    title: str
    citation: str
    provenance: str  # read: in the source's own text; from memory; constructed
    data: dict
    answer: dict
    published: dict
    unique: bool  # one optimal plan only
    note: str = ""

    def figure(self, key, *, sign=1, slack=0.0):
        """The figure to meet, as pytest's approx."""
        if key not in self.published:
            return pytest.approx(sign * self.answer[key], rel=1e-6, abs=max(1e-6, slack))
        value, tolerance = self.published[key]
        return pytest.approx(sign * value, rel=1e-6, abs=max(tolerance, 1e-6, slack))

    def plan(self, key):
        """A list to meet, each entry within the tolerance printed."""
        value, tolerance = self.published.get(key, (self.answer[key], 1e-4))
        return pytest.approx(value, abs=max(tolerance, 1e-4))


@functools.cache
def cases():
    """Every case by name."""
    rows = [
        row for path in sorted(DATA.glob("*.json")) for row in json.loads(path.read_text(encoding="utf-8"))
    ]
    return {row["name"]: Case(**row) for row in rows}


def case(name):
    return cases()[name]
