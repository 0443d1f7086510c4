"""The pages of a keeper's workbook: download the template, send it filled in, see what it would do, post it."""

from django.contrib import messages
from django.http import Http404, HttpResponse
from django.shortcuts import redirect, render
from django.urls import reverse
from django.utils import timezone
from django.views.decorators.http import require_http_methods, require_safe

from apiary.errors import Refused
from inventory import loading, uploads
from inventory.forms import SheetForm
from inventory.forms.sheets import CountSheetForm
from inventory.sheets.kinds import BY_CODE, KINDS
from inventory.views.explaining import sentences_of

WORKBOOK = "application/vnd.openxmlformats-officedocument.spreadsheetml.sheet"


@require_safe
def sheet_template(request):
    return _download("everything")


@require_safe
def sheet_to_fill_in(request, kind):
    """The workbook of one matter alone, as the books have it."""
    if kind not in BY_CODE:
        raise Http404("There is no such workbook")
    if kind != "count":
        return _download(kind)
    form = CountSheetForm(request.GET)
    if not form.is_valid():
        return render(request, "inventory/load_sheet.html", _page(SheetForm(), counting=form), status=422)
    return _download(kind, **form.asked())


def _download(kind, **asked):
    content = loading.workbook_of(kind, day=timezone.localdate(), **asked)
    answer = HttpResponse(content, content_type=WORKBOOK)
    answer["Content-Disposition"] = f'attachment; filename="{BY_CODE[kind].file}"'
    return answer


@require_http_methods(["GET", "HEAD", "POST"])
def load_sheet(request):
    """Takes the file and leads on to its dry run."""
    form = SheetForm(request.POST, request.FILES) if request.method == "POST" else SheetForm()
    if form.is_valid():
        file = form.cleaned_data["file"]
        digest = uploads.keep(file.read(), now=timezone.now())
        request.session["sheet"] = {"digest": digest, "name": file.name[:120]}
        return redirect("load-sheet-tried", digest)
    status = 422 if form.errors else 200
    return render(request, "inventory/load_sheet.html", _page(form), status=status)


def _page(form, *, counting=None):
    kinds = [kind for kind in KINDS if kind.code != "count"]
    return {"form": form, "kinds": kinds, "count_form": counting or CountSheetForm(auto_id="count-%s")}


@require_http_methods(["GET", "HEAD", "POST"])
def load_sheet_tried(request, digest):
    """The dry run of the file that was sent; by POST that very file is posted, if it posts what was shown."""
    content, today = uploads.content_of(digest), timezone.localdate()
    if content is None:
        raise Http404("This file is not kept here any more: send it again")
    reading = loading.read(content, day=today)
    if request.method == "POST" and reading.sheet is not None:
        words = {"day": today, "who": request.user, "digest": digest, "shown": request.POST.get("shown")}
        try:
            loaded = loading.load(reading.sheet, **words)
        except Refused as refusal:
            messages.error(request, f"Nothing was posted. {refusal}")
            return redirect("load-sheet-tried", digest)
        messages.success(request, loaded.sentence)
        return redirect(_next(loaded))
    tried = reading.sheet and loading.dry_run(reading.sheet, day=today, who=request.user, digest=digest)
    return render(request, "inventory/sheet_tried.html", _tried(request, digest, reading, tried))


def _next(loaded):
    """A single draft is looked at next, several are listed."""
    if len(loaded.drafts) == 1:
        return reverse("count", args=[loaded.drafts[0].count])
    return reverse("counts" if loaded.drafts else "yards")


def _tried(request, digest, reading, tried):
    sent = request.session.get("sheet", {})
    name = sent.get("name") if sent.get("digest") == digest else None
    blocked = bool(reading.faults or (tried and (tried.refusals or tried.first_on)))
    drafts = [(draft, sentences_of(draft.explanations)) for draft in tried.drafts] if tried else []
    page = {"name": name or "Your workbook", "reading": reading, "tried": tried, "may_post": not blocked}
    return {**page, "drafts": drafts}
