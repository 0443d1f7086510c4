"""All addresses of the site: the packages name their own, this page strings them together."""

from django.contrib import admin
from django.urls import include, path

urlpatterns = [
    path("admin/", admin.site.urls),
]
_ = include
