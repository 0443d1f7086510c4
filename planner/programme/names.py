"""Names of columns and rows, made here only, from the problem's codes.

Takes a kind and codes; gives a name every solver's file accepts. Two codes that come out alike get a number.
"""

import re
from functools import lru_cache

_OTHER = re.compile(r"[^A-Za-z0-9_]")


@lru_cache(maxsize=65536)
def _plain(code):
    return _OTHER.sub("_", str(code))[:40]


class Names:
    """Makes each name once."""

    def __init__(self):
        self._taken = set()

    def name(self, kind, *codes):
        """`kind_code_code`, letters, digits and _ only, unlike every name before."""
        plain = "_".join([kind, *map(_plain, codes)])
        name, number = plain, 1
        while name in self._taken:
            number += 1
            name = f"{plain}__{number}"
        self._taken.add(name)
        return name
