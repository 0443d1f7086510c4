"""Addresses of inventory's pages."""

from django.urls import path

from inventory.views import acts, books, boxes, care, counts, deadouts, ends, gear, held, loads, orders, sheets

urlpatterns = [
    path("sheet/", sheets.load_sheet, name="load-sheet"),
    path("sheet/template/", sheets.sheet_template, name="sheet-template"),
    path("sheet/<str:digest>/", sheets.load_sheet_tried, name="load-sheet-tried"),
    path("gear/", gear.gear, name="gear"),
    path("orders/", orders.orders, name="orders"),
    path("orders/<int:pk>/", orders.order, name="order"),
    path("orders/<int:pk>/receive/", orders.order_receive, name="order-receive"),
    path("orders/<int:pk>/cancel/", orders.order_cancel, name="order-cancel"),
    path("books/", books.books, name="books"),
    path("books/<int:pk>/", books.books_act, name="books-act"),
    path("books/<int:pk>/reverse/", books.books_reverse, name="books-reverse"),
    path("acts/move/", loads.act_move, name="act-move"),
    path("acts/place/", acts.act_place, name="act-place"),
    path("acts/take-off/", acts.act_take_off, name="act-take-off"),
    path("acts/assemble/", care.act_assemble, name="act-assemble"),
    path("acts/mend/", care.act_mend, name="act-mend"),
    path("acts/set-aside/", care.act_mark, name="act-mark"),
    path("acts/scrap/", care.act_scrap, name="act-scrap"),
    path("acts/burn/", care.act_burn, name="act-burn"),
    path("acts/use/", care.act_use, name="act-use"),
    path("acts/deadout/", deadouts.act_deadout, name="act-deadout"),
    path("acts/release/", held.act_release, name="act-release"),
    path("acts/super-up/", boxes.act_super_up, name="act-super-up"),
    path("acts/pull/", boxes.act_pull, name="act-pull"),
    path("acts/brood-box/", boxes.act_brood_box, name="act-brood-box"),
    path("acts/salvage/", ends.act_salvage, name="act-salvage"),
    path("acts/end/<int:pk>/", ends.act_end, name="act-end"),
    path("deadouts/", deadouts.deadouts, name="deadouts"),
    path("deadouts/losses/", deadouts.deadout_report, name="deadout-report"),
    path("deadouts/<int:pk>/", deadouts.deadout, name="deadout"),
    path("deadouts/<int:pk>/care/", deadouts.deadout_care, name="deadout-care"),
    path("deadouts/<int:pk>/word/", held.deadout_word, name="deadout-word"),
    path("held/", held.held, name="held"),
    path("acts/correct/", counts.act_correct, name="act-correct"),
]
