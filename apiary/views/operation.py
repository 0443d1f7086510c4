"""The keeper's page of the operation: its name and how it is reached, as they stand on every order."""

from django.contrib import messages
from django.shortcuts import redirect, render
from django.views.decorators.http import require_http_methods

from apiary.forms import OperationForm
from apiary.operation import operation as told_so_far
from apiary.operation import tell_operation


@require_http_methods(["GET", "HEAD", "POST"])
def operation(request):
    form = OperationForm(request.POST or None, instance=told_so_far())
    if request.method == "POST" and form.is_valid():
        tell_operation(**form.cleaned_data)
        messages.success(request, "Kept: this stands on every order from now on.")
        return redirect("operation")
    return render(request, "apiary/operation.html", {"form": form}, status=422 if form.errors else 200)
