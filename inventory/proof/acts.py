"""The acts in the order in which they were written, each with what was told of colonies under its seal.

Takes nothing but the tables; streams acts and events once and gives faults in words. Holds a digest of each act's
events, never the rows. What was told outside any act since the last one waits for the next: it has no seal yet.
"""

from collections import defaultdict

from apiary.colonies import SEALED
from apiary.errors import told as said
from apiary.models import ColonyEvent
from inventory.ledger.digest import ACT_FIELDS, Told, act_digest, act_text
from inventory.models import Act

CHUNK = 5000


class Acts:
    """One pass over the acts. `length` and `head` are known once `faults` has been read to its end."""

    def __init__(self):
        self.length, self.head = 0, ""

    def faults(self):
        """The faults of each act, in the order of the chain."""
        told = told_by_act()
        acts = Act.objects.order_by("id").values_list("pk", "digest", *ACT_FIELDS)
        for pk, digest, key, name, day, *rest in acts.iterator(chunk_size=CHUNK):
            events = told[key].digest if key in told else ""
            if digest != act_digest(self.head, act_text(key, name, day, *rest), events):
                yield (
                    f"Act {pk} ({name}, {said(day) if day else 'no day there is'}) does not carry the digest it "
                    "should: it or what it told of colonies was edited, something was put in or taken out, or an "
                    "act before it was removed behind the books' back."
                )
            self.head = digest
            self.length += 1


def told_by_act():
    """{key of an act: what is told under its seal}."""
    told: defaultdict[str, Told] = defaultdict(Told)
    events = ColonyEvent.objects.exclude(sealed_by="").order_by("id").values_list("sealed_by", *SEALED)
    for key, *event in events.iterator(chunk_size=CHUNK):
        told[key].add(*event)
    return told
