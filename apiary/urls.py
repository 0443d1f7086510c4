"""All addresses of the site: the packages name their own, this page strings them together."""

from django.contrib import admin
from django.contrib.auth.views import LogoutView
from django.urls import include, path

from apiary.views import door, operation, people, places, tags

urlpatterns = [
    path("", places.this_week, name="home"),
    path("sign-in/", door.SignIn.as_view(), name="sign-in"),
    path("sign-in/<str:token>/", door.first_sign_in, name="first-sign-in"),
    path("sign-out/", LogoutView.as_view(), name="sign-out"),
    path("more/", places.more, name="more"),
    path("people/", people.everyone, name="people"),
    path("people/<int:pk>/", people.person, name="person"),
    path("people/<int:pk>/end/", people.person_end, name="person-end"),
    path("people/<int:pk>/link/", people.person_link, name="person-link"),
    path("operation/", operation.operation, name="operation"),
    path("yards/", places.yards, name="yards"),
    path("yards/<slug:code>/", places.yard, name="yard"),
    path("yards/<slug:code>/tags/", tags.yard_tags, name="yard-tags"),
    path("tags/", tags.tags, name="tags"),
    path("colonies/<int:pk>/", places.colony, name="colony"),
    path("", include("inventory.urls")),
    path("", include("planner.urls")),
    path("admin/", admin.site.urls),
]
