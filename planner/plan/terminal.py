"""Lines for a terminal: how wide they are, and how a longer sentence is broken.

Takes plain text, gives it on lines of at most 100 columns. What is said is its caller's.
"""

import textwrap

WIDTH = 100
RULE = "-" * WIDTH


def wrapped(text, *, first="", further=""):
    """The text on as many lines as it takes; `first` and `further` stand before them."""
    return textwrap.fill(text, WIDTH, initial_indent=first, subsequent_indent=further)
