"""The planner's addresses: seasons and their answers, runs and their orders."""

from django.urls import path

from planner import after_views, beside_views, order_views, print_views, views

urlpatterns = [
    path("season/", views.seasons, name="season"),
    path("season/<int:pk>/", views.season_answers, name="season-answers"),
    path("season/<int:pk>/usual/", views.season_usual, name="season-usual"),
    path("season/<int:pk>/run/", views.season_run, name="season-run"),
    path("season/<int:pk>/again/", beside_views.season_again, name="season-again"),
    path("runs/beside/", beside_views.runs_beside, name="runs-beside"),
    path("runs/<int:pk>/what-if/", beside_views.run_what_if, name="run-what-if"),
    path("runs/<int:pk>/beliefs/", beside_views.run_beliefs, name="run-beliefs"),
    path("runs/<int:pk>/take-over/", beside_views.run_take_over, name="run-take-over"),
    path("runs/<int:pk>/", views.run_page, name="run"),
    path("runs/<int:pk>/progress/", views.run_progress, name="run-progress"),
    path("runs/<int:pk>/cancel/", views.run_cancel, name="run-cancel"),
    path("runs/<int:pk>/order/", order_views.run_order, name="run-order"),
    path("runs/<int:pk>/order.xlsx", order_views.run_workbook, name="run-workbook"),
    path("runs/<int:pk>/after/", after_views.run_after, name="run-after"),
    path("runs/<int:pk>/orders.zip", order_views.run_orders, name="run-orders"),
    path("runs/<int:pk>/after/print/", print_views.run_after_print, name="run-after-print"),
    path("runs/<int:pk>/approve/", order_views.run_approve, name="run-approve"),
]
