"""One act on bees and gear: colony events and movements written in one transaction, or none of it.

Takes the act's name and a function `work(key)` that changes colonies (telling them act_key=key) and gives ledger
entries, none where no gear moves; gives the Act. The books are locked before `work` looks at anything; a resend
with the same key gives the first act and does not call it.
"""

from inventory.ledger.posting import post


def together(name, work, *, day, who, key, note="", found_allowed=False):
    """Carries out `work` and writes its act; with `found_allowed` pieces beyond the book are booked as found."""
    return post(
        name, lambda: work(str(key)), day=day, who=who, key=key, note=note, found_allowed=found_allowed
    )
