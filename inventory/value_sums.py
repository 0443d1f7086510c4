"""The books in money as the pages show them: value on a day, a stretch, what was written off, what wears.

Takes days; gives rows with the parts' names, sums beside them. Reads the whole books once each. Changes nothing.
"""

from dataclasses import dataclass
from decimal import Decimal
from typing import Any

from inventory.models import Location, Part, Sale, SaleReturn
from inventory.pieces import PLACE_OF_KIND
from inventory.receipts import acts_without_invoice
from inventory.value import Books, Rest, ScheduleRow, books_of, schedule, value_by_part
from inventory.value.books import Amount
from inventory.valuing import BROKEN, LEFT, LESS, MORE, lives, posted_lines, rests

WRITTEN_OFF = (
    *(LEFT[kind] for kind in (Location.Kind.SCRAP, Location.Kind.BURNT, Location.Kind.LOST)),
    BROKEN,
    LESS,
)
USED, SOLD = LEFT[Location.Kind.USED], LEFT[Location.Kind.SOLD]


@dataclass(frozen=True, kw_only=True)
class Named:
    """A part with what the books in money say of it."""

    part: Part
    amount: Any

    @property
    def name(self):
        return self.part.name[:1].upper() + self.part.name[1:]

    @property
    def list_value(self):
        return Decimal(self.amount.pieces * self.part.list_price_cents) / 100


@dataclass(frozen=True, kw_only=True)
class ValueSheet:
    rows: list
    whole: Amount
    waiting: list

    @property
    def list_value(self):
        return sum((row.list_value for row in self.rows), Decimal(0))


def value_sheet(*, as_of):
    """What is owned on the evening of a day, by part, at the moving average."""
    amounts = value_by_part(posted_lines(last=as_of), as_of=as_of)
    whole = sum(amounts.values(), Amount())
    return ValueSheet(rows=_named(amounts), whole=whole, waiting=list(acts_without_invoice(last=as_of)))


@dataclass(frozen=True, kw_only=True)
class YearSheet:
    books: Books
    rows: list
    waiting: list

    @property
    def whole(self):
        return self.books.whole


def year_sheet(*, first, last):
    """Opening, in, out and closing by part."""
    books = books_of(posted_lines(last=last), first=first, last=last)
    rows = _named({row.part: row for row in books.parts})
    return YearSheet(books=books, rows=rows, waiting=list(acts_without_invoice(last=last)))


@dataclass(frozen=True, kw_only=True)
class WhySheet:
    """One reason: its parts, and all of them together."""

    why: str
    rows: list

    @property
    def whole(self):
        return sum((row.amount for row in self.rows), Amount())


@dataclass(frozen=True, kw_only=True)
class WriteOffs:
    """`found` stands against what was counted less; money taken for bees is for bees and gear together."""

    reasons: list
    used: WhySheet
    sold: WhySheet
    found: WhySheet
    taken_cents: int
    sales: int

    @property
    def whole(self):
        return sum((reason.whole for reason in self.reasons), Amount())

    @property
    def taken(self):
        return Decimal(self.taken_cents) / 100


def write_offs(*, first, last):
    """What left for nothing, by why; what was used up; what was sold, beside the money taken for it."""
    parts = books_of(posted_lines(last=last), first=first, last=last).parts
    reasons = [_why(parts, why) for why in WRITTEN_OFF]
    sales = Sale.objects.standing().filter(day__range=(first, last))
    refunds = SaleReturn.objects.standing().filter(day__range=(first, last))
    taken = sum((sale.price_cents or 0) + sale.deposit_cents for sale in sales)
    return WriteOffs(
        reasons=[reason for reason in reasons if reason.rows],
        used=_why(parts, USED),
        sold=_why(parts, SOLD),
        found=_why(parts, MORE, came=True),
        taken_cents=taken - sum(back.refund_cents for back in refunds),
        sales=len(sales),
    )


def _why(parts, why, *, came=False):
    found = {row.part: (row.came if came else row.left).get(why) for row in parts}
    return WhySheet(why=why, rows=_named({part: amount for part, amount in found.items() if amount}))


@dataclass(frozen=True, kw_only=True)
class WearSheet:
    rows: list
    whole: ScheduleRow
    rest: Rest

    @property
    def charge(self):
        """All that is depreciated this year, of what stayed and of what went."""
        return self.whole.this_year + self.whole.gone_year


def wear_sheet(*, year, convention):
    """The year's depreciation, by part and the year it came."""
    years = lives()
    rest = rests()
    rows = schedule(posted_lines(), years, year=year, convention=convention, rest=rest)
    parts = _parts()
    named = [Named(part=parts[row.part], amount=row) for row in rows]
    nothing = ScheduleRow(part="", came=year, years=0)
    return WearSheet(rows=sorted(named, key=_place), whole=sum(rows, nothing), rest=rest)


def _parts():
    return {str(part.pk): part for part in Part.objects.all()}


def _place(row):
    came = getattr(row.amount, "came", 0)
    return (PLACE_OF_KIND[row.part.kind], row.part.code, came if isinstance(came, int) else 0)


def _named(amounts):
    parts = _parts()
    return sorted((Named(part=parts[part], amount=amount) for part, amount in amounts.items()), key=_place)
