"""What is lent to whom: the questions. Acts that were reversed count for nothing.

Takes loans and days; gives pieces still out, by loan and by person. Changes nothing.
"""

from dataclasses import dataclass
from datetime import date

from inventory.models import Loan, LoanBack, Location, Movement, Part


def standing_loans():
    """Loans whose act was not reversed, those due first, open-ended ones last."""
    rows = Loan.objects.filter(act__reversed_by__isnull=True).select_related("act")
    return sorted(rows, key=lambda loan: (loan.due_on is None, loan.due_on or loan.act.day, loan.pk))


def out_of(loan, *, as_of=None):
    """{(Part, condition): pieces} of a loan still out, on a day or at last; nothing that is zero."""
    return out_by_loan([loan], as_of=as_of)[loan.pk]


def out_by_loan(loans, *, as_of=None):
    """{loan's key: {(Part, condition): pieces still out}}, in two queries however many loans there are."""
    keys = [loan.pk for loan in loans]
    out: dict[int, dict[tuple, int]] = {key: {} for key in keys}
    given = Movement.objects.filter(act__loan__in=keys, target__kind=Location.Kind.LENT)
    back = Movement.objects.filter(act__loan_back__loan__in=keys, source__kind=Location.Kind.LENT)
    for rows, loan, sign in ((given, "act__loan", 1), (back, "act__loan_back__loan", -1)):
        rows = rows.filter(act__reversed_by__isnull=True)
        rows = rows if as_of is None else rows.filter(day__lte=as_of)
        for key, part, condition, quantity in rows.values_list(loan, "part", "condition", "quantity"):
            gear = (part, condition)
            out[key][gear] = out[key].get(gear, 0) + sign * quantity
    parts = Part.objects.in_bulk({part for gear in out.values() for part, _ in gear})
    return {
        key: {(parts[part], word): number for (part, word), number in gear.items() if number}
        for key, gear in out.items()
    }


@dataclass(frozen=True, kw_only=True)
class LoanOut:
    """One loan of which something is still out."""

    loan: Loan
    pieces: tuple  # ((Part, condition, number), ...) by part
    today: date

    @property
    def number(self):
        return sum(number for *_, number in self.pieces)

    @property
    def due(self):
        """Due today or earlier."""
        return self.loan.due_on is not None and self.loan.due_on <= self.today

    @property
    def overdue(self):
        return self.loan.due_on is not None and self.loan.due_on < self.today


def lent_out(*, on, yards=None):
    """LoanOuts on a day, those due first; with the keys of yards only what was lent from their stores."""
    loans = [loan for loan in standing_loans() if loan.act.day <= on]
    if yards is not None:
        theirs = set(Loan.objects.filter(act__movements__source__yard__in=yards).values_list("pk", flat=True))
        loans = [loan for loan in loans if loan.pk in theirs]
    out = out_by_loan(loans, as_of=on)
    return [LoanOut(loan=loan, today=on, pieces=_by_part(out[loan.pk])) for loan in loans if out[loan.pk]]


def due_back(*, on, yards=None):
    """LoanOuts that are due on the day or were before."""
    return [row for row in lent_out(on=on, yards=yards) if row.due]


def _by_part(gear):
    rows = ((part, condition, number) for (part, condition), number in gear.items())
    return tuple(sorted(rows, key=lambda row: (row[0].code, row[1])))


def came_back(act):
    """Whether something of what the act lent was booked as back or lost since, and stands."""
    return LoanBack.objects.filter(loan__act=act, act__reversed_by__isnull=True).exists()
