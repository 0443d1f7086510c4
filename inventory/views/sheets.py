"""The pages of a keeper's workbook: download the template, send it filled in, see what it would do, post it."""

from django.contrib import messages
from django.http import Http404, HttpResponse
from django.shortcuts import redirect, render
from django.utils import timezone
from django.views.decorators.http import require_http_methods, require_safe

from apiary.errors import Refused
from inventory import loading, uploads
from inventory.forms import SheetForm

WORKBOOK = "application/vnd.openxmlformats-officedocument.spreadsheetml.sheet"


@require_safe
def sheet_template(request):
    answer = HttpResponse(loading.blank_workbook(), content_type=WORKBOOK)
    answer["Content-Disposition"] = 'attachment; filename="my-gear.xlsx"'
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
    return render(request, "inventory/load_sheet.html", {"form": form}, status=status)


@require_http_methods(["GET", "HEAD", "POST"])
def load_sheet_tried(request, digest):
    """The dry run of the file that was sent; by POST that very file is posted."""
    content, today = uploads.content_of(digest), timezone.localdate()
    if content is None:
        raise Http404("This file is not kept here any more: send it again")
    reading = loading.read(content, day=today)
    if request.method == "POST" and reading.sheet is not None:
        try:
            loaded = loading.load(reading.sheet, day=today, who=request.user, digest=digest)
        except Refused as refusal:
            messages.error(request, f"Nothing was posted. {refusal}")
            return redirect("load-sheet-tried", digest)
        messages.success(request, loaded.sentence)
        return redirect("yards")
    tried = reading.sheet and loading.dry_run(reading.sheet, day=today, who=request.user, digest=digest)
    return render(request, "inventory/sheet_tried.html", _tried(request, digest, reading, tried))


def _tried(request, digest, reading, tried):
    sent = request.session.get("sheet", {})
    name = sent.get("name") if sent.get("digest") == digest else None
    blocked = bool(reading.faults or (tried and (tried.refusals or tried.first_on)))
    return {"name": name or "Your workbook", "reading": reading, "tried": tried, "may_post": not blocked}
