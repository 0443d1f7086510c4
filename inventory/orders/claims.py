"""Broken pieces claimed with the supplier, and the answer: credited, replaced or refused.

Takes a receipt, an order line, the part and how many; writes Claim. Pieces to be replaced are owed again from the
day of the answer; a credit lowers what the receipt cost.
"""

from django.db import transaction
from django.db.models import Sum

from apiary.colonies import refuse_future
from inventory.gear import Condition
from inventory.models import Act, Claim, Location
from inventory.orders.owed import settle
from inventory.orders.refusals import (
    AnsweredBefore,
    ClaimAnswered,
    NotAnAnswer,
    NotPrice,
    NotReceipt,
    TooManyClaimed,
)


def broken_in(act):
    """{(order line, part): pieces of the receipt that came broken}, less those claimed already."""
    rows = act.movements.filter(source__kind=Location.Kind.SUPPLIER, condition=Condition.TO_MEND)
    left: dict[tuple, int] = {}
    for row in rows.select_related("order_line__offer", "part"):
        key = (row.order_line, row.part)
        left[key] = left.get(key, 0) + row.quantity
    sums = act.claims.order_by().values_list("line_id", "part_id").annotate(total=Sum("pieces"))
    claimed = {(line, part): total for line, part, total in sums}
    return {key: n - claimed.get((key[0].pk, key[1].pk), 0) for key, n in left.items()}


def claim(act, *, line, part, pieces, day, who=None):
    """Tells the supplier that so many pieces of a receipt came broken."""
    with transaction.atomic():
        act = Act.objects.get(pk=act.pk)
        if day < act.day or hasattr(act, "reversed_by"):
            raise NotReceipt(act=act)
        refuse_future(day)
        there = broken_in(act).get((line, part), 0)
        if isinstance(pieces, bool) or not isinstance(pieces, int) or not 1 <= pieces <= there:
            raise TooManyClaimed(part=part, pieces=pieces, broken=there)
        return Claim.objects.create(act=act, line=line, part=part, pieces=pieces, day=day, who=who)


def answer_claim(claim, *, answer, day, credit_cents=0):
    """What the supplier said. Money only comes with a credit."""
    with transaction.atomic():
        current = Claim.objects.select_for_update().select_related("line__order", "part").get(pk=claim.pk)
        if current.answer != Claim.Answer.OPEN:
            raise ClaimAnswered(part=current.part, answer=current.get_answer_display())
        if answer not in (Claim.Answer.CREDITED, Claim.Answer.REPLACED, Claim.Answer.REFUSED):
            raise NotAnAnswer(answer=answer)
        if day < current.day:
            raise AnsweredBefore(claimed_on=current.day, day=day)
        refuse_future(day)
        wanted = 1 if answer == Claim.Answer.CREDITED else 0
        if isinstance(credit_cents, bool) or not isinstance(credit_cents, int) or credit_cents < wanted:
            raise NotPrice(what="credit", cents=credit_cents)
        current.answer, current.answered_on = Claim.Answer(answer), day
        current.credit_cents = credit_cents if wanted else 0
        current.save(update_fields=["answer", "answered_on", "credit_cents"])
        settle([current.line.order])
    return current
