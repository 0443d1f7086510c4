"""All addresses of the site: the packages name their own, this page strings them together."""

from django.contrib import admin
from django.contrib.auth.views import LogoutView
from django.urls import include, path

from apiary import views

urlpatterns = [
    path("", views.this_week, name="home"),
    path("sign-in/", views.SignIn.as_view(), name="sign-in"),
    path("sign-in/<str:token>/", views.first_sign_in, name="first-sign-in"),
    path("sign-out/", LogoutView.as_view(), name="sign-out"),
    path("more/", views.more, name="more"),
    path("yards/", views.yards, name="yards"),
    path("yards/<slug:code>/", views.yard, name="yard"),
    path("colonies/<int:pk>/", views.colony, name="colony"),
    path("", include("inventory.urls")),
    path("", include("planner.urls")),
    path("admin/", admin.site.urls),
]
