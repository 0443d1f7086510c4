"""The door: name and password, and the one-time link that lets one in and leads to their yard."""

from django.contrib.auth import login
from django.contrib.auth.decorators import login_not_required
from django.contrib.auth.views import LoginView
from django.shortcuts import redirect, render
from django.utils import timezone
from django.views.decorators.cache import never_cache
from django.views.decorators.http import require_http_methods

from apiary import people
from apiary.forms import FirstSignInForm, SignInForm

BACKEND = "django.contrib.auth.backends.ModelBackend"


class SignIn(LoginView):
    """Name and password. Wrong too often locks the name and address out for a while."""

    template_name = "apiary/sign_in.html"
    authentication_form = SignInForm
    redirect_authenticated_user = True


@login_not_required
@never_cache
@require_http_methods(["GET", "HEAD", "POST"])
def first_sign_in(request, token):
    """The one-time link: looking uses nothing up, sending the form does."""
    now = timezone.now()
    try:
        person = people.link_of(token, now=now).user
        asks = not person.has_usable_password()
        form = _asking(request, person) if asks else None
        if request.method == "POST" and (form is None or form.is_valid()):
            given = form.cleaned_data if form else {}
            person = people.use_link(
                token, now=now, name=given.get("name", ""), password=given.get("password", "")
            )
            login(request, person, backend=BACKEND)
            yard = people.first_yard(person)
            return redirect("yard", yard.code) if yard else redirect("home")
    except people.LinkNotGood as refusal:
        return render(request, "apiary/link_not_good.html", {"refusal": refusal}, status=410)
    return render(request, "apiary/first_sign_in.html", {"form": form, "person": person})


def _asking(request, person):
    """The form for name and password; who was invited by name finds it filled in."""
    invited = {"name": person.username} if hasattr(person, "access") else {}
    return FirstSignInForm(request.POST or None, person=person, initial=invited)
