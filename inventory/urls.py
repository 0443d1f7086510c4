"""Addresses of inventory's pages."""

urlpatterns: list = []
