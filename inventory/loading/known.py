"""What the books know already, for a workbook to be read against.

Asks the tables; gives the Known record of inventory/sheets. Adds the catalogue where it is missing, else
changes nothing.
"""

from apiary.models import Colony, HiveSet, Keeper, Yard
from inventory.catalogue import ensure_catalogue
from inventory.gear import Comb, CombUse, Kind
from inventory.models import Offer, Part, Supplier
from inventory.sheets import Known, KnownSet


def known_by_books():
    """Parts, sets, yards, suppliers, offers and colonies as they stand."""
    ensure_catalogue()
    parts = list(Part.objects.all())
    yards = list(Yard.objects.all())
    ended = Colony.objects.filter(ended_on__isnull=False).values_list("tag", flat=True)
    living = Colony.objects.filter(ended_on__isnull=True).values_list("tag", "yard__code")
    offers = Offer.objects.values_list("code", "supplier__code", "name")
    return Known(
        parts={part.code: part.name for part in parts},
        units={part.code: part.unit for part in parts},
        sets={
            one.code: KnownSet(name=one.name, width=one.width, is_nuc=one.is_nuc)
            for one in HiveSet.objects.all()
        },
        super_boxes=super_boxes(parts),
        yards={yard.code: yard.name for yard in yards},
        stands={yard.code: yard.stands for yard in yards},
        shed=next((yard.code for yard in yards if yard.is_shed), ""),
        suppliers=dict(Supplier.objects.values_list("code", "name")),
        offers={code: (supplier, name) for code, supplier, name in offers},
        colonies=dict(living),
        ended=frozenset(ended),
        has_keeper=Keeper.objects.exists(),
    )


def super_boxes(parts):
    """(depth, width) of every super that box and drawn honey comb of the catalogue make."""
    combs = {part.depth for part in parts if is_honey_comb(part)}
    return frozenset((part.depth, part.width) for part in parts if is_box(part) and part.depth in combs)


def is_box(part):
    return part.kind == Kind.BOX and not part.flat


def is_honey_comb(part):
    return part.comb == Comb.DRAWN and part.comb_use == CombUse.HONEY and not part.treated
