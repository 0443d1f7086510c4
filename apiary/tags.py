"""The next free tags: counted on from the tags a yard has, in the keeper's own way of writing them.

Takes a tag to be like and how many; gives tags no colony has. Changes nothing.
"""

import re

from apiary.models import Colony

NUMBERED = re.compile(r"^(.*?)(\d{1,9})$")


def following(tag, taken, count):
    """`count` tags counted on from one, past all that are taken: CR-09, CR-10; A, A-2 where it has no number."""
    taken = {one.lower() for one in taken}
    match = NUMBERED.match(tag)
    stem, digits = match.groups() if match else (f"{tag}-" if tag else "", "1" if tag else "0")
    number, fresh = int(digits), list[str]()
    while len(fresh) < count:
        number += 1
        candidate = f"{stem}{number:0{len(digits)}d}"
        if candidate.lower() not in taken:
            fresh.append(candidate)
    return fresh


def usual_tag(tags):
    """The first of those tags that begin as most of them do; '' of none."""
    stems = [match.group(1) if (match := NUMBERED.match(tag)) else tag for tag in tags]
    usual = max(stems, key=stems.count, default=None)
    return tags[stems.index(usual)] if tags else ""


def free_tags(like, count=1):
    """Tags after the highest that begins as `like` does, of all colonies there ever were."""
    taken = list(Colony.objects.values_list("tag", flat=True))
    match = NUMBERED.match(like)
    stem = match.group(1).lower() if match else ""
    alike = [found for found in map(NUMBERED.match, taken) if found and found.group(1).lower() == stem]
    highest = max(alike, key=lambda found: int(found.group(2)), default=None)
    return following(highest.group(0) if match and highest else like, taken, count)
