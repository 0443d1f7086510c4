"""A site of one page."""

from django.urls import path

from apiary import views

urlpatterns = [path("", views.this_week, name="home")]
