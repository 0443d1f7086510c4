"""Seconds of a solve: spent and left.

Takes a limit in seconds; gives what is left of it.
"""

import time


class Clock:
    """Runs from when it is made."""

    def __init__(self, seconds):
        self.began, self.seconds = time.monotonic(), seconds

    def spent(self):
        return time.monotonic() - self.began

    def left(self, least=1.0):
        """Seconds left, or `least` where there are fewer."""
        return max(self.seconds - self.spent(), least)

    def is_over(self):
        return self.spent() >= self.seconds
