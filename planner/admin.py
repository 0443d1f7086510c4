"""Seasons and runs to look at in the admin. Nothing is edited here: the pages and runs.py write them."""

from django.contrib import admin

from planner.models import Run, Season


class LookOnly(admin.ModelAdmin):
    def has_add_permission(self, request):
        return False

    def has_change_permission(self, request, obj=None):
        return False

    def has_delete_permission(self, request, obj=None):
        return False


@admin.register(Season)
class SeasonAdmin(LookOnly):
    list_display = ["name", "starts_on", "budget"]
    search_fields = ["name"]


@admin.register(Run)
class RunAdmin(LookOnly):
    list_display = ["id", "season", "status", "asked_at", "finished_at", "scenarios", "approved_at"]
    list_filter = ["status", "season"]
    exclude = ["problem", "plan", "report"]
