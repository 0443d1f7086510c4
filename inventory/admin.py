"""Inventory in the office's admin: catalogue and price lists to edit, the books to read only."""

from django.contrib import admin

from apiary.admin import ReadOnly
from inventory.models import (
    Act,
    BookSeal,
    GearSet,
    GearSetLine,
    Holding,
    Location,
    Movement,
    Offer,
    OfferPart,
    Order,
    OrderLine,
    Part,
    PriceStep,
    Recipe,
    RecipeLine,
    Supplier,
)


class RecipeLines(admin.TabularInline):
    model = RecipeLine
    extra = 0


class GearSetLines(admin.TabularInline):
    model = GearSetLine
    extra = 0


class OfferParts(admin.TabularInline):
    model = OfferPart
    extra = 0


class PriceSteps(admin.TabularInline):
    model = PriceStep
    extra = 0


class OrderLines(ReadOnly, admin.TabularInline):
    model = OrderLine
    extra = 0


class Movements(ReadOnly, admin.TabularInline):
    model = Movement
    extra = 0
    fields = ["day", "part", "condition", "quantity", "source", "target", "reason", "found"]


@admin.register(Part)
class PartAdmin(admin.ModelAdmin):
    list_display = ["code", "name", "kind", "depth", "width", "tare_lb", "list_price", "years_of_life"]
    list_filter = ["kind", "depth", "width", "comb"]
    search_fields = ["code", "name"]


@admin.register(Recipe)
class RecipeAdmin(admin.ModelAdmin):
    list_display = ["code", "name", "minutes"]
    inlines = [RecipeLines]


@admin.register(GearSet)
class GearSetAdmin(admin.ModelAdmin):
    list_display = ["code", "name", "hive_set"]
    inlines = [GearSetLines]


@admin.register(Supplier)
class SupplierAdmin(admin.ModelAdmin):
    list_display = ["code", "name", "lead_weeks", "invented"]


@admin.register(Offer)
class OfferAdmin(admin.ModelAdmin):
    list_display = ["code", "supplier", "name", "price_rule", "open_from", "open_until"]
    list_filter = ["supplier"]
    search_fields = ["code", "name"]
    inlines = [OfferParts, PriceSteps]


@admin.register(Order)
class OrderAdmin(ReadOnly, admin.ModelAdmin):
    list_display = ["reference", "supplier", "placed_on", "due_on", "status"]
    list_filter = ["status", "supplier"]
    inlines = [OrderLines]


@admin.register(Act)
class ActAdmin(ReadOnly, admin.ModelAdmin):
    list_display = ["id", "name", "day", "who", "note", "reverses"]
    list_filter = ["name"]
    date_hierarchy = "day"
    inlines = [Movements]


@admin.register(Movement)
class MovementAdmin(ReadOnly, admin.ModelAdmin):
    list_display = ["id", "day", "quantity", "part", "condition", "source", "target", "reason", "found"]
    list_filter = ["reason", "condition", "found"]
    list_select_related = ["part", "source__yard", "source__colony", "target__yard", "target__colony"]
    date_hierarchy = "day"


@admin.register(Holding)
class HoldingAdmin(ReadOnly, admin.ModelAdmin):
    list_display = ["location", "part", "condition", "quantity"]
    list_filter = ["condition"]
    list_select_related = ["part", "location__yard", "location__colony"]


@admin.register(Location)
class LocationAdmin(ReadOnly, admin.ModelAdmin):
    list_display = ["id", "kind", "yard", "colony"]


@admin.register(BookSeal)
class BookSealAdmin(ReadOnly, admin.ModelAdmin):
    list_display = ["length", "head"]
