"""Tables of pages as workbooks: the page answers ?download=NAME with its table NAME instead of itself.

The tag {% download %} around a table hands its lines over where they were asked for; the rights are the page's own,
for it is the page that is asked. Takes the page's answer; gives it, or the workbook. Books nothing.
"""

import io

from django.http import FileResponse

from inventory.printed.shown_table import read_tables
from inventory.printed.table_book import book_of, file_name

ASKED = "download"
ALL_ROWS = 1_000_000
TYPE = "application/vnd.openxmlformats-officedocument.spreadsheetml.sheet"


class Downloads:
    """Middleware inside the gate: what a page refuses is refused here too."""

    def __init__(self, answer):
        self.answer = answer

    def __call__(self, request):
        response = self.answer(request)
        told = getattr(request, "table_asked_for", None)
        if told is None or response.status_code != 200:
            return response
        return workbook(**told)


def asked_for(request):
    """The name of the table whose workbook is asked for; empty where the page itself is."""
    return request.GET.get(ASKED, "") if request.method in ("GET", "HEAD") else ""


def rows_a_page(request, usual):
    """A workbook holds every row; a page only so many."""
    return ALL_ROWS if asked_for(request) else usual


def link_to(request, name):
    """The page's own address with all that was chosen on it, asking for a table."""
    query = request.GET.copy()
    query.pop("page", None)
    query[ASKED] = name
    return f"?{query.urlencode()}"


def workbook(lines, title, words, day):
    """The answer that holds the first table of these lines."""
    data = book_of(read_tables(lines)[0], name=title, words=words, day=day)
    return FileResponse(
        io.BytesIO(data), as_attachment=True, filename=file_name(title, day), content_type=TYPE
    )
