"""Questions about bees sold: what each buyer still brings back, by when, and how much deposit is left.

Takes sales; gives rows. What came back is told by the movements of the acts that brought it, of those not undone.
"""

from dataclasses import dataclass
from datetime import date

from django.db.models import Sum

from inventory.gear import Reason
from inventory.models import Act, Movement, Part, Sale, SaleReturn


@dataclass(frozen=True, kw_only=True)
class Waiting:
    """One sale of which something is still to come: `still` is {Part: pieces}."""

    sale: Sale
    still: dict
    deposit_left_cents: int
    back_by: date | None

    @property
    def pieces_words(self):
        return ", ".join(f"{number} × {part}" for part, number in self.still.items()) or "nothing more"

    @property
    def deposit_words(self):
        return f"{self.deposit_left_cents / 100:,.2f}"

    @property
    def pieces(self):
        return sum(self.still.values())

    @property
    def tags(self):
        return ", ".join(colony.tag for colony in self.sale.colonies.all())


@dataclass(frozen=True, kw_only=True)
class SaleRow:
    """A sale in the list of all: `waiting` is None where nothing is to come any more. Amounts in whole cents."""

    sale: Sale
    act: Act
    waiting: Waiting | None

    @property
    def tags(self):
        return ", ".join(colony.tag for colony in self.sale.colonies.all())

    @property
    def is_open(self):
        return self.waiting is not None

    @property
    def deposit_left_cents(self):
        return self.waiting.deposit_left_cents if self.waiting else 0

    @property
    def still_words(self):
        return self.waiting.pieces_words if self.waiting and self.waiting.still else ""


def all_sales():
    """Every sale that was not undone, the latest first."""
    sales = list(Sale.objects.standing().order_by("-day", "-pk").prefetch_related("colonies", "owed__part"))
    acts = Act.objects.in_bulk([sale.act_key for sale in sales], field_name="key")
    came, returns = came_back(sales), _returns(sales)
    return [
        SaleRow(
            sale=sale,
            act=acts[sale.act_key],
            waiting=_waiting(sale, came.get(sale.pk, {}), returns.get(sale.pk, [])),
        )
        for sale in sales
    ]


def waiting_sales(*, within=None):
    """Sales of which pieces are still to come or a deposit is still held, the first due first.

    `within`: keys of the yards whose colonies were sold, None for all.
    """
    sales = Sale.objects.standing().order_by("back_by", "pk").prefetch_related("colonies", "owed__part")
    if within is not None:
        sales = sales.filter(colonies__yard__in=within).distinct()
    sales = list(sales)
    came, returns = came_back(sales), _returns(sales)
    rows = [_waiting(sale, came.get(sale.pk, {}), returns.get(sale.pk, [])) for sale in sales]
    return [row for row in rows if row is not None]


def still_owed(sale):
    """{Part: pieces} the buyer has not brought back yet; nothing of a settled sale."""
    row = _waiting(sale, came_back([sale]).get(sale.pk, {}), _returns([sale]).get(sale.pk, []))
    return row.still if row is not None else {}


def is_settled(sale):
    """Whether nothing is waited for: no pieces and no deposit."""
    return _waiting(sale, came_back([sale]).get(sale.pk, {}), _returns([sale]).get(sale.pk, [])) is None


def deposit_left(sale):
    """Cents of the deposit not given back yet."""
    return sale.deposit_cents - sum(back.refund_cents for back in sale.returns.standing())


def came_back(sales):
    """{sale's id: {part's id: pieces}} of all that was brought back."""
    keys = {back.act_key: sale_id for sale_id, backs in _returns(sales).items() for back in backs}
    rows = Movement.objects.filter(act__key__in=keys, reason=Reason.RETURNED).order_by()
    came: dict = {}
    for key, part, number in rows.values_list("act__key", "part_id").annotate(total=Sum("quantity")):
        parts = came.setdefault(keys[key], {})
        parts[part] = parts.get(part, 0) + number
    return came


def returned_since(act):
    """The last coming back of the sale that this act booked; None where the act sold nothing or all was undone."""
    sale = Sale.objects.filter(act_key=act.key).first()
    return sale.returns.standing().select_related("sale").last() if sale is not None else None


def _returns(sales):
    """{sale's id: its comings back that stand}."""
    backs: dict = {}
    rows = SaleReturn.objects.standing().filter(sale__in=sales).order_by("day", "pk")
    for back in rows:
        backs.setdefault(back.sale_id, []).append(back)
    return backs


def _waiting(sale, came, backs):
    still: dict[Part, int] = {}
    for line in sale.owed.all():
        number = line.quantity - came.get(line.part_id, 0)
        if number > 0:
            still[line.part] = number
    left = sale.deposit_cents - sum(back.refund_cents for back in backs)
    if any(back.settles for back in backs) or (not still and left <= 0):
        return None
    return Waiting(sale=sale, still=still, deposit_left_cents=left, back_by=sale.back_by)
