"""The sheet of a count: one store or colony, counted beside booked, and the book corrected."""

from django.views.decorators.http import require_http_methods

from inventory import ledger
from inventory.forms import CountForm
from inventory.views.answering import ActSheet, answer, ground_of, home_store, leave_to, needs_yards

CORRECT = ActSheet(
    title="Correct a count",
    verb="Correct the book",
    rows="Booked and counted",
    template="inventory/count.html",
    row="inventory/count_row.html",
    tells="count",
    nothing="The book has nothing here. Add what you counted.",
)


@require_http_methods(["GET", "HEAD", "POST"])
@needs_yards
def act_correct(request):
    at = ground_of(request, "yard", hidden=("colony",))
    here = at.chosen("colony") or at.chosen("yard") or home_store(request.user)
    form = CountForm(request.POST or None, ground=here, day=at.on, as_of=at.as_of)

    def post(told):
        return ledger.correct(location=here, counted=form.counted(), **told)

    at.settle(**({} if at.chosen("colony") else {"yard": here.code}))
    words = "On colony" if at.chosen("colony") else "Store of"
    return answer(request, CORRECT, form, post, at=at, leave=leave_to(here), cells=[(words, here)])
