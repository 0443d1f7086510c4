"""A yard fed: syrup in quarts by its ratio, dry sugar or patties in lb, colony by colony.

Takes portions (colony, how much) and the store the sugar comes from; gives the Act. The sugar of the whole yard
leaves the store as fed, in whole lb; what each colony got is written beside it.
"""

from django.db import transaction

from apiary.rights import refuse_elsewhere
from inventory.errors import FedTwice, NotAQuantity, NothingGiven, Refused, UnknownWord, refuse
from inventory.gear import Reason
from inventory.ledger.hives import living
from inventory.ledger.lines import MOST, Line, checked
from inventory.ledger.posting import Entry, post
from inventory.ledger.rules import store
from inventory.locations import outside
from inventory.models import Feeding, Location
from inventory.syrup import RATIONS


def feed(*, ration, portions, source, day, who, key, found_allowed=False, note=""):
    """`ration` is a code of syrup.RATIONS, `portions` gives (colony, quarts or lb) pairs; zero is none."""

    def entries():
        if ration not in RATIONS:
            raise UnknownWord(word=ration, what="feed", choices=", ".join(RATIONS))
        given = _checked(portions, day, who)
        lb = RATIONS[ration].lb(sum(quantity for _, quantity in given))
        line = checked([Line(RATIONS[ration].part, lb)], act="feed")[0]
        here, away = store(source), outside(Location.Kind.USED)
        yield Entry(part=line.part, quantity=line.quantity, source=here, target=away, reason=Reason.FED)

    portions = list(portions)
    with transaction.atomic():
        act = post("feed", entries, day=day, who=who, key=key, note=note, found_allowed=found_allowed)
        if not act.feedings.exists():
            Feeding.objects.bulk_create(
                Feeding(act=act, colony=colony, feed=ration, quantity=quantity)
                for colony, quantity in portions
                if quantity
            )
    return act


def _checked(portions, day, who):
    """The portions above zero, of colonies alive on the day; raises all that is wrong."""
    problems: list[Refused] = []
    given, seen = [], set()
    for colony, quantity in portions:
        if isinstance(quantity, bool) or not isinstance(quantity, int) or not 0 <= quantity <= MOST:
            problems.append(NotAQuantity(colony=colony, quantity=quantity))
        elif colony.pk in seen:
            problems.append(FedTwice(colony=colony))
        elif quantity:
            given.append((colony, quantity))
        seen.add(colony.pk)
    refuse(problems)
    if not given:
        raise NothingGiven(act="feed")
    rows = living([colony for colony, _ in given], day)
    refuse_elsewhere(who, {colony.yard_id for colony in rows.values()})
    return given
