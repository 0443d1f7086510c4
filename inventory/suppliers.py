"""What a supplier's letterhead says: address, phone, e-mail, the number they know the keeper by. Its only writer.

Takes a supplier and the words; name, shipping and lead time come with the keeper's sheet.
"""

from inventory.models import Supplier

TOLD = ("address", "phone", "email", "customer_number")


def tell_supplier(supplier, *, address, phone, email, customer_number):
    """Writes all four; gives the supplier as it now stands."""
    told = {"address": address, "phone": phone, "email": email, "customer_number": customer_number}
    Supplier.objects.filter(pk=supplier.pk).update(**{key: told[key].strip() for key in TOLD})
    supplier.refresh_from_db()
    return supplier
