"""Who may do what where: one table of rights by the name of an address, and the yards a person was given.

Takes a person and the name of an address or a yard; gives yes or no, the yards they may see, or NotYours with the
sentence for the page. gate.py asks before any page is opened, the writers of books and colonies ask once more.
Changes nothing: people.py gives and takes away.
"""

from dataclasses import dataclass

from django.core.exceptions import PermissionDenied
from django.forms import ModelChoiceField

from apiary.models import Access, Colony, Yard

KEEPER, HELPER, READER = Access.Role.KEEPER, Access.Role.HELPER, Access.Role.READER


class NotYours(PermissionDenied):
    """A person's role or yards do not allow it; `why` is the sentence for the page. Nothing was booked."""

    def __init__(self, why):
        self.why = why
        super().__init__(why)


@dataclass(frozen=True, kw_only=True)
class Right:
    """Whom an address is open to. `yard` and `colony` name its argument that is a yard's code or a colony's number."""

    roles: frozenset = frozenset({KEEPER})
    door: bool = False  # open to whoever comes, signed in or not
    yard: str = ""
    colony: str = ""


def looked_at(**where):
    """Open to all three roles; a reader never sends anything to it."""
    return Right(roles=frozenset({KEEPER, HELPER, READER}), **where)


def field(**where):
    """A field act: the keeper anywhere, a helper in the yards given to them."""
    return Right(roles=frozenset({KEEPER, HELPER}), **where)


DOOR, LOOK, FIELD, KEEPERS = Right(door=True), looked_at(), field(), Right()

# One row for each address of the project, by its name. What is missing here is the keeper's alone, and a test fails.
RIGHTS = {
    # the door and the house
    "sign-in": DOOR,
    "first-sign-in": DOOR,
    "sign-out": DOOR,
    "home": LOOK,
    "more": LOOK,
    "yards": LOOK,
    "yard": looked_at(yard="code"),
    "tags": LOOK,
    "yard-tags": looked_at(yard="code"),
    "colony": looked_at(colony="pk"),
    "people": KEEPERS,
    "person": KEEPERS,
    "person-end": KEEPERS,
    "person-link": KEEPERS,
    "operation": KEEPERS,
    # gear, where it lies; its value only for the keeper
    "gear": LOOK,
    "sheet-template": KEEPERS,
    "sheet-to-fill-in": KEEPERS,
    "load-sheet": KEEPERS,
    "load-sheet-tried": KEEPERS,
    # acts in the field and at the bench
    "act-move": FIELD,
    "act-feed": FIELD,
    "act-draw": FIELD,
    "act-lend": FIELD,
    "act-get-back": FIELD,
    "lent": FIELD,
    "evening": FIELD,
    "evening-undo": FIELD,
    "act-place": FIELD,
    "act-take-off": FIELD,
    "act-assemble": FIELD,
    "act-mend": FIELD,
    "act-mark": FIELD,
    "act-scrap": FIELD,
    "act-burn": FIELD,
    "act-use": FIELD,
    "act-correct": FIELD,
    # counts and histories; what was found is asked of the keeper
    "counts": FIELD,
    "counts-interval": KEEPERS,
    "count": FIELD,
    "count-enter": FIELD,
    "count-drop": FIELD,
    "found": KEEPERS,
    "gear-place": looked_at(yard="code"),
    "gear-colony": looked_at(colony="pk"),
    "gear-part": KEEPERS,
    "act-super-up": FIELD,
    "act-pull": FIELD,
    "act-brood-box": FIELD,
    "act-salvage": FIELD,
    "act-end": field(colony="pk"),
    # deadouts; held-back gear is released by the keeper alone
    "act-deadout": FIELD,
    "deadouts": LOOK,
    "deadout": LOOK,
    "deadout-care": FIELD,
    "deadout-report": LOOK,
    "held": LOOK,
    "deadout-word": KEEPERS,
    "act-release": KEEPERS,
    # sheets to print for the field
    "print-yards": LOOK,
    "print-yard": looked_at(yard="code"),
    "print-count": field(yard="code"),
    "print-haul": FIELD,
    "print-deadout": looked_at(colony="pk"),
    "print-deadouts": LOOK,
    # acts on bees; a sale is the keeper's business, what comes back of it anyone's who works there
    "act-split": FIELD,
    "act-hive": FIELD,
    "act-unite": FIELD,
    "act-requeen": FIELD,
    "act-move-colonies": FIELD,
    "act-lose-yard": KEEPERS,
    "act-sell": KEEPERS,
    "sales": KEEPERS,
    "sale-back": FIELD,
    # orders: a helper unloads the truck, and sees no price
    "orders": FIELD,
    "order": FIELD,
    "order-receive": FIELD,
    "order-send": KEEPERS,
    "order-file": KEEPERS,
    "supplier": KEEPERS,
    "order-cancel": KEEPERS,
    "order-close": KEEPERS,
    "order-reopen": KEEPERS,
    "order-invoice": KEEPERS,
    "order-claim": KEEPERS,
    "order-claim-answer": KEEPERS,
    # the books; a helper opens and takes back only what they booked themselves
    "books": KEEPERS,
    "books-act": FIELD,
    "books-reverse": FIELD,
    "books-value": KEEPERS,
    "books-year": KEEPERS,
    "books-write-offs": KEEPERS,
    "books-depreciation": KEEPERS,
    "books-basis": KEEPERS,
    # the season
    "season": KEEPERS,
    "season-answers": KEEPERS,
    "season-usual": KEEPERS,
    "season-run": KEEPERS,
    "season-again": KEEPERS,
    "runs-beside": KEEPERS,
    "run-what-if": KEEPERS,
    "run-take-over": KEEPERS,
    "run-beliefs": KEEPERS,
    "run": KEEPERS,
    "run-progress": KEEPERS,
    "run-cancel": KEEPERS,
    "run-order": KEEPERS,
    "run-after": LOOK,
    "run-after-print": LOOK,
    "run-workbook": KEEPERS,
    "run-orders": KEEPERS,
    "run-approve": KEEPERS,
}


def role_of(user):
    """keeper, helper or reader; empty for who was given none, was switched off or is not signed in."""
    if user is None or not user.is_authenticated or not user.is_active:
        return ""
    if user.is_superuser:
        return KEEPER
    access = _access(user)
    return access.role if access is not None and access.ended_at is None else ""


def may(user, name, yard=None):
    """Whether the address of that name is open to them, and the yard too where one is told."""
    right = RIGHTS.get(name, KEEPERS)
    open_to_them = right.door or role_of(user) in right.roles
    return open_to_them and (yard is None or in_reach(user, yard))


def may_see_money(user):
    """Prices, costs and values are the keeper's business."""
    return role_of(user) == KEEPER


def yards_of(user):
    """Keys of the yards they may see and work in; None for the keeper: all there are."""
    role = role_of(user)
    if role == KEEPER:
        return None
    if not hasattr(user, "_yards_given"):
        user._yards_given = (
            frozenset(_access(user).yards.values_list("pk", flat=True)) if role else frozenset()
        )
    return user._yards_given


def in_reach(user, yard):
    """Whether a yard is theirs to see and work in."""
    given = yards_of(user)
    return given is None or yard.pk in given


def grounds(user):
    """Yards a page or form may offer them, as a queryset."""
    return within(user, Yard.objects.all(), "pk")


def yard_codes(user):
    """Codes of the yards they may see; None for the keeper: all there are."""
    return None if yards_of(user) is None else set(grounds(user).values_list("code", flat=True))


def hives(user):
    """Colonies a page or form may offer them, as a queryset."""
    return within(user, Colony.objects.all(), "yard")


def within(user, rows, field):
    """The rows whose yard (`field`, as in a filter) is theirs."""
    given = yards_of(user)
    return rows if given is None else rows.filter(**{f"{field}__in": given})


def narrow(form, user):
    """Leaves only their yards and colonies in every choice of a form; gives the form."""
    given = yards_of(user)
    for asked in form.fields.values() if given is not None else ():
        rows = asked.queryset if isinstance(asked, ModelChoiceField) else None
        if rows is not None and rows.model in (Yard, Colony):
            asked.queryset = within(user, rows, "pk" if rows.model is Yard else "yard")
    return form


def refuse_elsewhere(user, yards):
    """NotYours where one of the yards (rows or keys) was not given to them. No one at all may do everything:
    commands and the opening books have no person."""
    given = None if user is None else yards_of(user)
    if given is None:
        return
    keys = {getattr(yard, "pk", yard) for yard in yards} - {None}
    elsewhere = Yard.objects.filter(pk__in=keys - given).values_list("name", flat=True)
    if elsewhere:
        names = ", ".join(elsewhere)
        raise NotYours(
            f"{names} is not among the yards given to you: nothing was booked. Ask the keeper for it."
        )


def refuse_not_own(user, whose):
    """NotYours where an act was booked by someone else: only the keeper looks at it and takes it back."""
    if role_of(user) != KEEPER and whose != user:
        raise NotYours("You take back only what you booked yourself: ask the keeper about this act.")


def _access(user):
    if not hasattr(user, "_access_row"):
        user._access_row = Access.objects.filter(user=user).first()
    return user._access_row
