"""The paper a sheet is printed on: A4 or Letter, as the person chose last, else as is usual where their money is.

Takes a request; gives the paper's name and keeps a choice the address tells. Knows nothing of what is printed.
"""

from apiary.models import Keeper

PAPERS = (("a4", "A4"), ("letter", "Letter"))
LETTER_MONEY = ("USD", "CAD", "MXN")
KEPT = "paper"


def paper_of(request):
    """ "a4" or "letter"; a choice in the address is kept for the sheets to come."""
    asked = request.GET.get("paper", "")
    if asked in dict(PAPERS):
        request.session[KEPT] = asked
        return asked
    kept = request.session.get(KEPT, "")
    return kept if kept in dict(PAPERS) else usual_paper()


def usual_paper():
    """Letter where the keeper counts in North American money, A4 elsewhere and while nobody is written down."""
    money = Keeper.objects.values_list("money", flat=True).first()
    return "letter" if money in LETTER_MONEY else "a4"
