"""Faults of a problem file: every one with its JSON path, what was expected and what was found.

Takes values as JSON gave them; gives checked values, or WRONG after noting a fault. Builds no records (see reading.py).
"""

import json
import math
from dataclasses import dataclass, field

WRONG = object()
LARGEST = 1e15


class Faults(Exception):
    """All that is wrong with a problem file; `messages` has one sentence a fault."""

    def __init__(self, messages):
        self.messages = list(messages)
        super().__init__("\n".join(self.messages))


class RepeatedKeys(dict):
    """A JSON object in which keys came twice; `repeated` names them."""

    repeated: tuple[str, ...] = ()


def shown(value):
    """The value as it stands in the file, cut to a readable length."""
    try:
        text = json.dumps(value, ensure_ascii=False)
    except (TypeError, ValueError, RecursionError):
        text = repr(value)
    return text if len(text) <= 60 else text[:57] + "..."


def a_list(items):
    """Items in one sentence: a, b or c."""
    items = [str(item) for item in items]
    return items[0] if len(items) == 1 else ", ".join(items[:-1]) + " or " + items[-1]


@dataclass
class Checks:
    """Collects faults while values are checked one by one."""

    messages: list[str] = field(default_factory=list)

    def note(self, path, sentence):
        self.messages.append(f"{path}: {sentence}" if path else sentence)
        return WRONG

    def expected(self, path, what, value):
        return self.note(path, f"must be {what}, got {shown(value)}")

    def number(self, path, value, *, lowest=None, highest=None, above=None):
        """A finite number within its limits, as a float."""
        what = _number_words(lowest, highest, above)
        if isinstance(value, bool) or not isinstance(value, int | float):
            return self.expected(path, what, value)
        if not math.isfinite(value) if isinstance(value, float) else abs(value) > LARGEST:
            return self.expected(path, what if isinstance(value, float) else "a number below 1e15", value)
        if abs(value) > LARGEST:
            return self.expected(path, "a number below 1e15", value)
        low = lowest is not None and value < lowest
        if low or (highest is not None and value > highest) or (above is not None and value <= above):
            return self.expected(path, what, value)
        return float(value)

    def whole(self, path, value, *, lowest=0, highest=None, why=""):
        """A whole number within its limits, as an int."""
        what = f"a whole number ≥ {lowest}" if highest is None else f"a whole number {lowest} to {highest}"
        what += why
        if isinstance(value, bool) or not isinstance(value, int | float):
            return self.expected(path, what, value)
        if isinstance(value, float) and not value.is_integer():
            return self.expected(path, what, value)
        if value < lowest or value > (LARGEST if highest is None else highest):
            return self.expected(path, what, value)
        return int(value)

    def flag(self, path, value):
        return value if isinstance(value, bool) else self.expected(path, "true or false", value)

    def text(self, path, value):
        if isinstance(value, str) and value.strip():
            return value
        return self.expected(path, "a text that is not blank", value)

    def choice(self, path, value, choices):
        if isinstance(value, str) and value in choices:
            return value
        return self.expected(path, a_list(f'"{item}"' for item in choices), value)

    def code_of(self, path, value, known, what):
        """A text that is one of the known codes."""
        if not isinstance(value, str):
            return self.expected(path, f"the code of a {what}", value)
        if known is not None and value not in known:
            return self.note(path, f"no {what} has the code {shown(value)}")
        return value

    def array(self, path, value):
        return value if isinstance(value, list | tuple) else self.expected(path, "a list", value)

    def table(self, path, value):
        """An object; keys given twice are noted."""
        if not isinstance(value, dict):
            return self.expected(path, "an object", value)
        for key in getattr(value, "repeated", ()):
            self.note(_join(path, key), "this key is given twice")
        return value


def _number_words(lowest, highest, above):
    if above is not None:
        return f"a number > {above}" if highest is None else f"a number > {above} and ≤ {highest}"
    if lowest is not None and highest is not None:
        return f"a number {lowest} to {highest}"
    return "a number" if lowest is None else f"a number ≥ {lowest}"


def _join(path, key):
    return f"{path}.{key}" if path else str(key)
