"""Orders cancelled before lines could be closed: their lines are closed from the day they were placed."""

from django.db import migrations


def close_cancelled(apps, schema_editor):
    """Orders cancelled so far were owed on no day: their lines are closed from the day they were placed."""
    lines = apps.get_model("inventory", "OrderLine").objects.filter(order__status="cancelled")
    apps.get_model("inventory", "LineClosing").objects.bulk_create(
        apps.get_model("inventory", "LineClosing")(line=line, why="cancelled", day=line.order.placed_on)
        for line in lines.select_related("order")
    )


class Migration(migrations.Migration):
    dependencies = [("inventory", "0007_dealings")]

    operations = [migrations.RunPython(close_cancelled, migrations.RunPython.noop)]
