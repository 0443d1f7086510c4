"""A site of one page."""

from django.urls import path

from apiary.views import places

urlpatterns = [path("", places.this_week, name="home")]
