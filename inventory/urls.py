"""Addresses of inventory's pages."""

from django.urls import path

from inventory.views import sheets

urlpatterns = [
    path("sheet/", sheets.load_sheet, name="load-sheet"),
    path("sheet/template/", sheets.sheet_template, name="sheet-template"),
    path("sheet/<str:digest>/", sheets.load_sheet_tried, name="load-sheet-tried"),
]
