"""One thing a keeper is asked about the season: the words, the range, the default and where it comes from.

Takes plain values, gives an immutable record. The questions themselves stand in the folder `asked`.
"""

from dataclasses import dataclass

JUDGEMENT = "judgement"

GROUPS = ("bees", "splits", "flow", "gear", "feed", "money", "work")


@dataclass(frozen=True, kw_only=True)
class Question:
    """`default` None means: by region (see regions.py), or, for the target, the colonies of today."""

    key: str
    group: str
    ask: str
    help: str
    unit: str = ""
    kind: str = "number"  # number, whole, share, week, choice, money, flag, winters
    default: object = None
    lowest: float | None = None
    highest: float | None = None
    choices: tuple[tuple[str, str], ...] = ()  # (value, words)
    source: str = JUDGEMENT
