"""One answer nobody can be sure of: how far off it may be nine years of ten, and how a keeper finds out.

Takes plain values, gives an immutable record. The doubts themselves stand in doubts.py.
"""

from dataclasses import dataclass

PLUS, TIMES, MEAN, CROPS, WINDOWS = "plus", "times", "mean", "crops", "windows"


@dataclass(frozen=True, kw_only=True)
class Doubt:
    """`kind`: plus and times say how low and high are had from the answer; mean is the share of a few years, crops how
    far good and poor years lie apart, windows the yards' own flows. `moves` are answers that go along; `within` one
    that may not be passed; `needs` an answer without which this one does not matter."""

    key: str
    name: str
    said: str  # "{value} of colonies come through the winter"
    kind: str = PLUS
    low: float = 0.0
    high: float = 0.0
    moves: tuple[str, ...] = ()
    within: str = ""
    needs: str = ""
    source: str = "judgement"
    find_out: str = ""
