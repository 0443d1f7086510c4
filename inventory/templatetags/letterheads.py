"""Suppliers and what is told of them, for the page of the operation. Takes nothing; gives rows. Changes nothing."""

from django import template

from inventory.models import Supplier

register = template.Library()


@register.inclusion_tag("inventory/suppliers_told.html")
def suppliers_told():
    return {"suppliers": list(Supplier.objects.order_by("name"))}
