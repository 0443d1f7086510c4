"""The tables of inventory's pages: gear by part, orders, bees sold. Columns and heads; the rows come from questions."""

import django_tables2 as tables
from django.utils.translation import gettext_lazy as _

FIGURE = {"th": {"class": "figure"}, "td": {"class": "figure"}}
QUANTITY = {"th": {"class": "figure"}, "td": {"class": "quantity"}}
ROOMY = {"th": {"class": "figure roomy"}, "td": {"class": "figure roomy"}}


def _counted(value):
    return f"{value:,}" if value else ""


class GearTable(tables.Table):
    """One row a part; its places open in it. Sums count pieces only."""

    caption = _("Gear by part; a part opens to show its places")
    row_head = "name"

    name = tables.TemplateColumn(
        template_name="inventory/part_cell.html",
        verbose_name=_("Part"),
        order_by=("name",),
        footer=_("Sum of pieces"),
    )
    in_stores = tables.Column(verbose_name=_("In stores"), attrs=FIGURE)
    on_colonies = tables.Column(verbose_name=_("On hives"), attrs=FIGURE)
    quantity = tables.Column(verbose_name=_("All"), attrs=QUANTITY)
    value = tables.Column(verbose_name=_("Value at list"), attrs=ROOMY)

    class Meta:
        empty_text = _("No gear answers to this. Choose less narrowly, or load your sheet first.")

    def __init__(self, rows, *, sums, shows_value, **kwargs):
        self.sums, self.shows_value = sums, shows_value
        super().__init__(rows, exclude=() if shows_value else ("value",), **kwargs)
        for name in ("in_stores", "on_colonies"):
            self.columns[name].column._footer = f"{getattr(sums, name):,}"
        self.columns["quantity"].column._footer = f"{sums.pieces:,}"
        if shows_value:
            self.columns["value"].column._footer = f"{sums.value:,.2f}"

    def render_in_stores(self, value):
        return _counted(value)

    def render_on_colonies(self, value):
        return _counted(value)

    def render_quantity(self, value):
        return f"{value:,}"

    def render_value(self, value):
        return f"{value:,.2f}"


class OrdersTable(tables.Table):
    """One row an order."""

    caption = _("Purchase orders, newest first")
    row_head = "reference"

    reference = tables.Column(
        accessor="order__reference", linkify=("order", {"pk": tables.A("order__pk")}), verbose_name=_("Order")
    )
    supplier = tables.Column(accessor="order__supplier__name", verbose_name=_("Supplier"))
    placed = tables.DateColumn(
        accessor="order__placed_on", format="j M Y", verbose_name=_("Placed"), attrs=ROOMY
    )
    due = tables.DateColumn(accessor="order__due_on", format="j M Y", verbose_name=_("Due"))
    status = tables.Column(
        verbose_name=_("Status"), attrs={"th": {"class": "roomy"}, "td": {"class": "roomy"}}
    )
    owed = tables.Column(verbose_name=_("Owed"), attrs=QUANTITY)
    cost = tables.Column(verbose_name=_("Cost"), attrs=ROOMY)

    class Meta:
        empty_text = _("No order yet. Approve a season's order and it stands here.")

    def render_owed(self, value):
        return f"{value:,}"

    def render_cost(self, value):
        return f"{value:,.2f}"


class SalesTable(tables.Table):
    """One row a sale; its sum is the price of all that were told one."""

    caption = _("Nucs and colonies sold, newest first")
    row_head = "buyer"

    buyer = tables.Column(
        accessor="sale__buyer",
        linkify=("books-act", {"pk": tables.A("act__pk")}),
        verbose_name=_("Buyer"),
        footer=_("Sum"),
    )
    day = tables.DateColumn(accessor="sale__day", format="j M Y", verbose_name=_("Sold"))
    tags = tables.Column(
        verbose_name=_("Colonies"), attrs={"th": {"class": "roomy"}, "td": {"class": "roomy"}}
    )
    price = tables.Column(
        accessor="sale__price_cents",
        verbose_name=_("Price"),
        attrs=FIGURE,
        default="",
        footer=lambda table: _money(sum(row.sale.price_cents or 0 for row in table.data)),
    )
    deposit = tables.Column(accessor="sale__deposit_cents", verbose_name=_("Deposit"), attrs=ROOMY)
    held = tables.Column(
        accessor="deposit_left_cents",
        verbose_name=_("Deposit held"),
        attrs=FIGURE,
        footer=lambda table: _money(sum(row.deposit_left_cents for row in table.data)),
    )
    still = tables.Column(
        accessor="still_words",
        default="",
        verbose_name=_("Still to come back"),
        attrs={"th": {"class": "roomy"}, "td": {"class": "roomy"}},
    )
    back_by = tables.DateColumn(
        accessor="sale__back_by", format="j M Y", verbose_name=_("By"), attrs=ROOMY, default=""
    )

    class Meta:
        empty_text = _("No sale answers to this. Sell a nuc or a colony from its page, and it stands here.")

    def render_price(self, value):
        return _money(value)

    def render_deposit(self, value):
        return _money(value)

    def render_held(self, value):
        return _money(value)


def _money(cents):
    return f"{cents / 100:,.2f}" if cents else ""
