"""Orders of the invented year: one in parts with broken and replaced pieces, one in full, one cancelled, one owed.

Takes the Year; writes through the acts on orders and the ledger's receipts. Suppliers and prices are invented.
"""

from inventory import ledger, orders
from inventory.ledger import Arrival, Instead
from inventory.models import Claim, LineClosing, Offer, Supplier
from inventory.orders import OrderItem


def ordered(year, supplier, packs, *, after, name):
    """A purchase order of so many packs of each offer."""
    items = [OrderItem(offer=Offer.objects.get(code=code), packs=n) for code, n in packs.items()]
    return orders.place_order(
        Supplier.objects.get(code=supplier),
        items,
        placed_on=year.day(after),
        reference=f"invented-{year.opened_on:%Y}-{name}",
    )


def spring_order(year):
    """Comes in two parts: some broken and claimed, one line short, buckets replaced by jars on another order."""
    packs = {"mo-excluder": 40, "mo-sheet-m": 2, "mo-framed-d": 14, "mo-guard": 1}
    order = ordered(year, "marrowstone", packs, after=3, name="spring")
    first = [_half(row) for row in orders.owed_lines(order) if row.part.code != "guard-10"]
    act = year.act(ledger.receive, after=26, order=order, into=year.shed, arrivals=first)
    _claimed(year, act)
    rest = [
        Arrival(part=row.part, sound=row.owed)
        for row in orders.owed_lines(order)
        if row.part.code != "guard-10"
    ]
    second = year.act(ledger.receive, after=38, order=order, into=year.shed, arrivals=rest)
    owed = {row.line.pk for row in orders.owed_lines(order) if row.owed}
    words = {"why": LineClosing.Why.SHORT, "reason": "none left this spring (invented)"}
    orders.close_lines(order, owed, day=year.day(40), who=year.who, **words)
    for number, (receipt, shipping) in enumerate(((act, 3200), (second, 2850)), start=1):
        _billed(year, receipt, number=number, shipping=shipping)


def _half(row):
    """Half of what is owed; of the excluders one came bent and one past mending."""
    half = row.owed // 2
    broken = 1 if row.part.code == "excluder-10" else 0
    return Arrival(part=row.part, sound=half - 2 * broken, to_mend=broken, scrapped=broken)


def _claimed(year, act):
    for (line, part), pieces in orders.broken_in(act).items():
        told = orders.claim(act, line=line, part=part, pieces=pieces, day=year.day(27), who=year.who)
        orders.answer_claim(told, answer=Claim.Answer.CREDITED, day=year.day(33), credit_cents=1040)


def _billed(year, act, *, number, shipping):
    """The invoice: each line at its share of the price on the order."""
    rows = act.movements.filter(order_line__isnull=False, source__kind="supplier")
    paid: dict = {}
    for row in rows.select_related("order_line"):
        units = sum(content.units for content in row.order_line.parts.all())
        share = row.order_line.cost_cents * row.quantity // units
        paid[row.order_line_id, None] = paid.get((row.order_line_id, None), 0) + share
    orders.enter_invoice(
        act,
        paid=paid,
        shipping_cents=shipping,
        day=act.day,
        who=year.who,
        number=f"invented-{number}",
    )


def dry_goods(year):
    """Patties in full; jars came instead of the buckets."""
    order = ordered(year, "gristbin", {"gd-patty-10": 3, "gd-bucket": 2}, after=2, name="patties")
    instead = Instead(ordered="bucket", settles=2, came=Arrival(part="jar", sound=24))
    arrivals = [Arrival(part="patty", sound=30)]
    told = {"order": order, "into": year.shed, "arrivals": arrivals, "substitutes": [instead]}
    year.act(ledger.receive, after=9, **told)


def sugar(year):
    """A load of sugar for the autumn, all of it and a bag over."""
    order = ordered(year, "gristbin", {"gd-sugar-50": 4}, after=185, name="sugar")
    arrivals = [Arrival(part="sugar", sound=250)]
    year.act(ledger.receive, after=193, order=order, into=year.shed, arrivals=arrivals, over_allowed=True)


def cancelled(year):
    """Nuc boxes ordered and called off before they came."""
    order = ordered(year, "pennyroyal", {"pj-nuc": 1}, after=62, name="nucs")
    orders.cancel_order(order, day=year.day(68), who=year.who, reason="enough in the shed (invented)")


def still_owed(year):
    """The autumn's order: half of it is still to come."""
    packs = {"mo-treatment": 4, "mo-guard": 2, "mo-feeder": 4}
    order = ordered(year, "marrowstone", packs, after=226, name="autumn")
    came = [Arrival(part="treatment", sound=40)]
    year.act(ledger.receive, after=247, order=order, into=year.shed, arrivals=came)
