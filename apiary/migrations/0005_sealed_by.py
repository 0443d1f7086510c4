"""Each event names the act whose seal covers it; those told by an act are under its own."""

from django.db import migrations, models
from django.db.models import F


def lay_under_their_acts(apps, schema_editor):
    events = apps.get_model("apiary", "ColonyEvent").objects.using(schema_editor.connection.alias)
    events.exclude(act_key="").update(sealed_by=F("act_key"))


class Migration(migrations.Migration):
    dependencies = [
        ("apiary", "0004_count_interval"),
    ]

    operations = [
        migrations.AddField(
            model_name="colonyevent",
            name="sealed_by",
            field=models.CharField(
                blank=True,
                db_index=True,
                default="",
                help_text=(
                    "Key of the act whose seal covers it: its own, or the next one where it was told outside any."
                ),
                max_length=64,
                verbose_name="sealed by",
            ),
        ),
        migrations.RunPython(lay_under_their_acts, migrations.RunPython.noop),
    ]
