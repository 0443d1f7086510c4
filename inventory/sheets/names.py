"""Names as people write them: what counts as the same, which known one is nearest, a code made of one.

Takes and gives text. Knows no table and no sheet.
"""

import difflib
import re
import unicodedata
from functools import lru_cache


@lru_cache(maxsize=20_000)
def alike(text):
    """The form in which two spellings of one name are the same: case, width and runs of spaces do not count."""
    return " ".join(unicodedata.normalize("NFKC", text).casefold().split())


def code_of(name, *, length=30):
    """A code of small letters, digits and hyphens made from a name; empty where nothing of it is left."""
    plain = unicodedata.normalize("NFKD", name).encode("ascii", "ignore").decode("ascii").lower()
    return re.sub(r"[^a-z0-9]+", "-", plain).strip("-")[:length].rstrip("-")


def nearest(text, names, *, likeness=0.6):
    """The known name most like the text, or None where none is near."""
    by_form = {alike(name): name for name in names}
    found = difflib.get_close_matches(alike(text), by_form, n=1, cutoff=likeness)
    return by_form[found[0]] if found else None


def suggestion(text, names, *, otherwise):
    """What to do about an unknown name: the nearest known one, else what the caller says."""
    near = nearest(text, names)
    return f"Did you mean {near!r}? Write that" if near else otherwise


class Names:
    """Things by code that may be called by name or by code; a name wins over a code."""

    def __init__(self, by_code):
        self.by_code = dict(by_code)
        self._codes = {alike(code): code for code in self.by_code}
        self._codes |= {alike(name): code for code, name in self.by_code.items()}

    def code(self, text):
        """The code meant, or None."""
        return self._codes.get(alike(text))

    def suggestion(self, text, *, otherwise):
        return suggestion(text, [*self.by_code, *self.by_code.values()], otherwise=otherwise)
