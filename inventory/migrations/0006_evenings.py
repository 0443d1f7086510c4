"""Evenings kept, the seal signed, movements indexed by day. The seal there is gets the mark of what it says now."""

from django.db import migrations, models
from django.utils.crypto import salted_hmac


def mark_seal(apps, editor):
    for seal in apps.get_model("inventory", "BookSeal").objects.all():
        text = f"{seal.length} {seal.head}"
        seal.mark = salted_hmac("inventory.seal", text, algorithm="sha256").hexdigest()
        seal.save(update_fields=["mark"])


class Migration(migrations.Migration):
    dependencies = [
        ("inventory", "0005_loans"),
    ]

    operations = [
        migrations.CreateModel(
            name="Evening",
            fields=[
                (
                    "id",
                    models.BigAutoField(
                        auto_created=True, primary_key=True, serialize=False, verbose_name="ID"
                    ),
                ),
                ("day", models.DateField(unique=True)),
                (
                    "length",
                    models.PositiveBigIntegerField(
                        help_text="How many movements there are up to that evening."
                    ),
                ),
                ("balances", models.JSONField()),
            ],
            options={"ordering": ["day"]},
        ),
        migrations.AddField(
            model_name="bookseal",
            name="mark",
            field=models.CharField(blank=True, max_length=64),
        ),
        migrations.AddIndex(
            model_name="movement",
            index=models.Index(fields=["day", "id"], name="movement_day"),
        ),
        migrations.RunPython(mark_seal, migrations.RunPython.noop),
    ]
