"""The sheets of the workbook and the columns of each: one description for template, writing and reading.

Takes nothing; gives TABLES. A heading is matched by its text, so columns may stand in any order.
"""

from decimal import Decimal

from inventory.gear import Condition, Depth
from inventory.sheets.cells import (
    Anything,
    Choice,
    Code,
    Day,
    Money,
    MoneyCode,
    Number,
    Text,
    Week,
    Whole,
    Winter,
    YesNo,
)
from inventory.sheets.columns import Table, column

SMALL = 32_767
PRICE_STEPS = 5


REGIONS = Choice(words=(("north", "north"), ("middle", "middle"), ("south", "south")))
STRENGTHS = Choice(words=(("strong", "strong"), ("fair", "fair"), ("weak", "weak")))
ORIGINS = Choice(words=tuple((word, word) for word in ("overwintered", "split", "nuc", "package", "swarm")))
CONDITIONS = Choice(words=tuple((word.value, word.value) for word in Condition))
DEPTHS = Choice(words=tuple((word.value, word.value) for word in Depth))
RULES = Choice(words=(("every pack at the lower price", "all_units"), ("only further packs", "incremental")))

KEEPER = Table(
    title="Keeper",
    about="One row: whose bees these are. Leave it empty later, and what the books know stays.",
    rows=1,
    columns=(
        column("name", "Name", Text(longest=120), "As it should stand on an order.", needed=True, width=28),
        column("address", "Address", Text(longest=500), "Where orders are sent.", empty="", width=36),
        column("region", "Region", REGIONS, "North, middle or south: the calendar.", empty=""),
        column("money", "Money", MoneyCode(), "Three letters. Empty: USD.", empty="USD"),
        column(
            "truck_lb",
            "Truck's load, lb",
            Whole(highest=200000),
            "What the door plate allows, people taken off. Empty: 1000.",
            empty=1000,
        ),
    ),
)

YARDS = Table(
    title="Yards",
    about="One row a yard, and one for the shed, marked yes.",
    columns=(
        column("name", "Yard", Text(longest=80), "The name you call it by.", needed=True, width=22),
        column("code", "Code", Code(longest=30), "May stay empty: made from the name.", empty=""),
        column("is_shed", "Shed", YesNo(), "yes for the one home store, else empty.", empty=False, width=8),
        column("region", "County or region", Text(longest=80), "May stay empty.", empty="", width=18),
        column("stands", "Stands", Whole(highest=SMALL), "How many hives it can hold.", empty=0, width=9),
        column("drive_minutes", "Drive, minutes", Whole(highest=SMALL), "From home, one way.", empty=0),
        column(
            "miles",
            "Miles",
            Number(places=1, highest=Decimal("99999.9")),
            "From home, one way.",
            empty=Decimal(0),
            width=9,
        ),
        column("gate", "Gate", Text(longest=40), "Code or key.", empty=""),
        column(
            "emergency",
            "Emergency address",
            Text(longest=160),
            "What to tell the ambulance. Stings kill: fill this in.",
            empty="",
            width=30,
        ),
        column("access", "Access", Text(longest=1000), "Mud, dogs, bridge, whom to ask.", empty="", width=30),
        column(
            "visit_every_days",
            "Visited every, days",
            Whole(lowest=1, highest=366),
            "Empty: as the season's answer says.",
        ),
    ),
)

FLOWS = Table(
    title="Flows",
    about="When a yard yields, and how much. A yard may have several rows.",
    columns=(
        column("yard", "Yard", Text(), "Pick it.", needed=True, width=22, picks="yards"),
        column("name", "Flow", Text(longest=60), "Clover, basswood, goldenrod.", needed=True, width=22),
        column(
            "first_week", "First week", Week(), "Week of the year, 1 to 53, or a date in it.", needed=True
        ),
        column("last_week", "Last week", Week(), "Week of the year, 1 to 53, or a date in it.", needed=True),
        column(
            "gain_lb",
            "Gain, lb",
            Number(places=1, highest=Decimal("9999.9")),
            "A full colony, an average year, the whole flow.",
            needed=True,
        ),
        column(
            "spread",
            "Spread",
            Number(places=2, highest=Decimal("9.99")),
            "Between years, share of the mean. Empty: 0.35 (judgement).",
            empty=Decimal("0.35"),
        ),
    ),
)

COLONIES = Table(
    title="Colonies",
    about="One row a living colony. Its boxes, combs, floor and cover follow from its set: not in Gear again.",
    rows=2000,
    columns=(
        column("tag", "Tag", Text(longest=30), "What stands on the hive.", needed=True),
        column("yard", "Yard", Text(), "Pick it.", needed=True, width=22, picks="yards"),
        column(
            "hive_set", "Set", Text(), "What it stands in, supers apart.", needed=True, width=26, picks="sets"
        ),
        column("strength", "Strength", STRENGTHS, "Empty: fair.", empty="fair"),
        column("origin", "Origin", ORIGINS, "Empty: overwintered.", empty="overwintered"),
        column("started_on", "Started on", Day(), "Empty: the day of loading."),
        column("mother", "Mother", Text(longest=30), "Tag of the colony it came from.", empty=""),
        column(
            "supers", "Supers on", Whole(highest=20), "Honey boxes on it now, their combs drawn.", empty=0
        ),
        column("super_depth", "Super depth", DEPTHS, "Empty: medium.", empty="medium"),
    ),
)

GEAR = Table(
    title="Gear",
    about="What lies in the shed and in yards, not on colonies: one row a place, part and condition.",
    rows=2000,
    columns=(
        column("yard", "Place", Text(), "The shed or a yard.", needed=True, width=22, picks="yards"),
        column("part", "Part", Text(), "Pick it.", needed=True, width=42, picks="parts"),
        column(
            "condition",
            "Condition",
            CONDITIONS,
            "Empty: sound. Held back: disease suspected, never planned with.",
            empty="sound",
        ),
        column(
            "quantity", "Count", Whole(highest=1000000), "Pieces, or the unit on sheet Lists.", needed=True
        ),
    ),
)

SUPPLIERS = Table(
    title="Suppliers",
    about="Whom you buy from, what shipping costs, how long it takes.",
    rows=100,
    columns=(
        column("name", "Supplier", Text(longest=80), "Its name.", needed=True, width=30),
        column("code", "Code", Code(longest=30), "May stay empty: made from the name.", empty=""),
        column(
            "order_fee", "Shipping an order", Money(), "Paid once an order. Empty: nothing.", empty=Decimal(0)
        ),
        column("free_from", "Shipping free from", Money(), "Empty: never free."),
        column(
            "lead_weeks", "Lead time, weeks", Whole(highest=104), "From order to gear. Empty: 2.", empty=2
        ),
        column(
            "complete",
            "List is complete",
            YesNo(),
            "yes: what Prices has no more is closed from today. Empty: it stays.",
            empty=False,
        ),
    ),
)


def _steps():
    """Further price steps: from so many packs on, a pack costs so much."""
    for number in range(2, PRICE_STEPS + 1):
        yield column(
            f"from_{number}",
            f"Price {number} from packs",
            Whole(lowest=2),
            "From so many packs on. May stay empty.",
        )
        yield column(f"price_{number}", f"Price {number}", Money(), "A pack, from there on.")


PRICES = Table(
    title="Prices",
    about="One row a line of a price list. A kit of several parts: leave Part empty, name its parts on Kits.",
    rows=1000,
    columns=(
        column("supplier", "Supplier", Text(), "Pick it.", needed=True, width=30, picks="suppliers"),
        column("name", "Offer", Text(longest=120), "As the price list calls it.", needed=True, width=36),
        column(
            "code",
            "Code",
            Code(longest=50),
            "May stay empty: made from supplier and offer.",
            empty="",
            width=18,
        ),
        column("part", "Part", Text(), "Empty for a kit.", empty="", width=42, picks="parts"),
        column("units", "Units in a pack", Whole(lowest=1), "Empty for a kit."),
        column("price_1", "Price", Money(), "One pack, without shipping.", needed=True),
        *_steps(),
        column(
            "price_rule",
            "Price steps mean",
            RULES,
            "Empty: every pack at the lower price.",
            empty="all_units",
            width=28,
        ),
        column("open_from", "Holds from", Day(), "May stay empty."),
        column("open_until", "Holds until", Day(), "May stay empty."),
        column("lead_weeks", "Lead time, weeks", Whole(highest=104), "Empty: the supplier's."),
        column("max_packs", "At most, packs", Whole(lowest=1), "Empty: as many as you like."),
    ),
)

KITS = Table(
    title="Kits",
    about="The parts of a kit, one row each; supplier and offer as on Prices.",
    columns=(
        column("supplier", "Supplier", Text(), "Pick it.", needed=True, width=30, picks="suppliers"),
        column("offer", "Offer", Text(longest=120), "As on Prices.", needed=True, width=36, picks="offers"),
        column("part", "Part", Text(), "Pick it.", needed=True, width=42, picks="parts"),
        column("units", "Units in a pack", Whole(lowest=1), "In one kit.", needed=True),
    ),
)

WINTERS = Table(
    title="Winters",
    about="Past winters: how many colonies went in and came out. One row a winter, or one a yard and winter.",
    rows=200,
    columns=(
        column("autumn", "Winter", Winter(), "As 2024/25, or the year it began.", needed=True),
        column("yard", "Yard", Text(), "Empty: all yards together.", empty="", width=22, picks="yards"),
        column("went_in", "Went in", Whole(lowest=1, highest=5000), "Colonies in autumn.", needed=True),
        column("came_out", "Came out", Whole(highest=5000), "Of those, alive in spring.", needed=True),
    ),
)

PLACES = Table(
    title="Places counted",
    about="One row a place: on which evening it was counted. What was counted stands on the sheet Counted.",
    rows=60,
    columns=(
        column("yard", "Place", Text(), "The shed or a yard.", needed=True, width=22, picks="yards"),
        column("day", "Counted on", Day(), "Counted on the evening of this day."),
        column("note", "Remark", Text(longest=200), "Who counted, or what was odd.", empty="", width=40),
    ),
)

COUNTED = Table(
    title="Counted",
    about="One row a part and condition. Leave the count empty where nothing was counted: that is no zero.",
    rows=2000,
    columns=(
        column("yard", "Place", Text(), "As on Places counted.", needed=True, width=22, picks="yards"),
        column("tag", "On colony", Text(longest=30), "Its tag. Empty: in the store.", empty="", width=12),
        column("part", "Part", Text(), "Pick it.", needed=True, width=42, picks="parts"),
        column("condition", "Condition", CONDITIONS, "Empty: sound.", empty="sound"),
        column("booked", "By the book", Anything(), "What the book said; not read.", empty=None),
        column("quantity", "Counted", Whole(), "Pieces there. Empty: not counted."),
    ),
)

TABLES = (KEEPER, YARDS, FLOWS, COLONIES, GEAR, SUPPLIERS, PRICES, KITS, WINTERS)
COUNT_TABLES = (PLACES, COUNTED)
HOW_TO, EXAMPLES, LISTS = "How to fill this in", "Examples", "Lists"
SILENT = frozenset(title.casefold() for title in (HOW_TO, EXAMPLES, LISTS))  # never read as data
