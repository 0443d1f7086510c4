"""Yards, colonies and the keeper in the office's admin. Colony state is read only: acts alone write it."""

from django.contrib import admin

from apiary.models import Colony, ColonyEvent, FlowWindow, HiveSet, Keeper, Yard


class ReadOnly:
    """Rows that acts alone write: looked at here, neither added, edited nor removed."""

    def has_add_permission(self, request, obj=None):
        return False

    def has_change_permission(self, request, obj=None):
        return False

    def has_delete_permission(self, request, obj=None):
        return False


class Windows(admin.TabularInline):
    model = FlowWindow
    extra = 0


class Events(ReadOnly, admin.TabularInline):
    model = ColonyEvent
    extra = 0


@admin.register(Keeper)
class KeeperAdmin(admin.ModelAdmin):
    list_display = ["name", "region", "money", "truck_lb", "invented"]


@admin.register(Yard)
class YardAdmin(admin.ModelAdmin):
    list_display = ["code", "name", "region", "stands", "drive_minutes", "is_shed"]
    search_fields = ["code", "name"]
    inlines = [Windows]


@admin.register(HiveSet)
class HiveSetAdmin(admin.ModelAdmin):
    list_display = ["code", "name", "width", "deep_boxes", "medium_boxes", "shallow_boxes", "is_nuc"]


@admin.register(Colony)
class ColonyAdmin(ReadOnly, admin.ModelAdmin):
    list_display = ["tag", "yard", "hive_set", "strength", "started_on", "ended_on", "ended_why"]
    list_filter = ["yard", "hive_set", "strength", "ended_why"]
    search_fields = ["tag"]
    inlines = [Events]
