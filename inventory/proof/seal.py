"""The seal held against the chains: how many movements and acts it counts, which are last, whether this site signed it.

Takes the seal and what the chains have; gives faults in words. What an earlier line said of the books can be held
against them too: that finds even a state put back with its own seal, as a copy of the whole database would be.
"""

from inventory.ledger.digest import is_marked

UNMARKED = (
    "The seal does not carry this site's mark: it was written behind the books' back, or the site's secret key was "
    "changed. If it was you who changed the key, and nothing else is wrong: check_books --seal-again."
)


def seal_faults(seal, *, length, head, acts, act_head):
    """What does not fit the chains; where all fits, whether it is this site's seal."""
    sealed, last = (seal.length, seal.head) if seal else (0, "")
    sealed_acts, last_act = (seal.acts, seal.act_head) if seal else (0, "")
    if sealed != length:
        yield f"The seal counts {sealed} movements, the books hold {length}."
    if last != head:
        yield "The seal does not fit the last movement: rows were cut from the end, put there, or the seal was edited."
    if sealed_acts != acts:
        yield f"The seal counts {sealed_acts} acts, the books hold {acts}."
    if last_act != act_head:
        yield "The seal does not fit the last act: acts were cut from the end, put there, or the seal was edited."
    said, found = (sealed, last, sealed_acts, last_act), (length, head, acts, act_head)
    if seal and said == found and not is_marked(seal):
        yield UNMARKED


def noted_faults(noted, *, length, digest):
    """What an earlier line said, so many movements and the seal's first letters; `digest` is that of that movement."""
    count, seal = noted
    if count > length:
        yield f"The seal that was noted counts {count:,} movements, the books hold {length:,}: some are gone."
    elif not (seal and (digest or "").startswith(seal)):
        yield (
            f"The seal that was noted, {seal}, is not that of movement {count:,}: "
            "what the books held then was rewritten since."
        )
