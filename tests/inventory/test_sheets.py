"""There and back: any sheet written into the template reads the same, also after LibreOffice has saved it."""

import datetime as dt
import subprocess
from decimal import Decimal

import pytest
from hypothesis import HealthCheck, assume, given, settings
from hypothesis import strategies as st

from inventory.gear import Condition
from inventory.sheets import (
    ColonyRow,
    FlowRow,
    GearRow,
    KeeperRow,
    OfferRow,
    Sheet,
    SupplierRow,
    WinterRow,
    YardRow,
    filled,
    read_sheet,
)
from inventory.sheets.examples import example
from inventory.sheets.names import alike
from tests.inventory.sheets.workbooks import altered, known

KNOWN = known()
PARTS = sorted(KNOWN.parts)
HIVE_SETS = sorted(code for code, one in KNOWN.sets.items() if not one.is_nuc)
SIGNS = st.characters(categories=("L", "N", "P", "S", "Zs"), exclude_characters="\u3000")
MONTHS = {"min_value": dt.date(2015, 1, 1), "max_value": dt.date(2030, 12, 31)}


def text(longest, *, shortest=0):
    tidy = st.text(SIGNS, min_size=shortest, max_size=longest).map(lambda words: " ".join(words.split()))
    return tidy.filter(lambda words: len(words) >= shortest)


def money(highest=99_999_99):
    return st.integers(0, highest).map(lambda cents: Decimal(cents) / 100)


def tenths(highest):
    return st.integers(0, highest).map(lambda number: Decimal(number) / 10)


@st.composite
def named(draw, longest, count, *, code_length=30):
    """Some (code, name) pairs, no two alike by either."""
    codes = draw(
        st.lists(
            st.from_regex(rf"[a-z0-9]{{1,{min(12, code_length)}}}", fullmatch=True),
            unique=True,
            max_size=count,
        )
    )
    names = draw(
        st.lists(text(longest, shortest=1), min_size=len(codes), max_size=len(codes), unique_by=alike)
    )
    assume(not {alike(name) for name in names} & set(codes))
    return list(zip(codes, names, strict=True))


@st.composite
def yards(draw):
    pairs = draw(named(80, 4))
    assume(pairs)
    return tuple(
        YardRow(
            code=code,
            name=name,
            is_shed=number == 0,
            region=draw(text(20)),
            stands=draw(st.integers(0, 32767)),
            drive_minutes=draw(st.integers(0, 600)),
            miles=draw(tenths(999_999)),
            gate=draw(text(40)),
            emergency=draw(text(160)),
            access=draw(text(60)),
            visit_every_days=draw(st.none() | st.integers(1, 366)),
        )
        for number, (code, name) in enumerate(pairs)
    )


@st.composite
def offers(draw, supplier):
    rows = []
    for code, name in draw(named(120, 3, code_length=50)):
        packs = sorted(draw(st.sets(st.integers(2, 500), max_size=4)))
        start, end = sorted([draw(st.dates(**MONTHS)), draw(st.dates(**MONTHS))])
        rows.append(
            OfferRow(
                code=f"{supplier}-{code}",
                supplier=supplier,
                name=name,
                parts=draw(
                    st.dictionaries(st.sampled_from(PARTS), st.integers(1, 1000), min_size=1, max_size=4)
                ),
                prices=((1, draw(money())), *((step, draw(money())) for step in packs)),
                price_rule=draw(st.sampled_from(["all_units", "incremental"])),
                open_from=draw(st.sampled_from([None, start])),
                open_until=draw(st.sampled_from([None, end])),
                lead_weeks=draw(st.none() | st.integers(0, 104)),
                max_packs=draw(st.none() | st.integers(1, 1000)),
            )
        )
    return rows


@st.composite
def colonies(draw, yard_codes):
    tags = draw(st.lists(text(30, shortest=1), unique_by=alike, max_size=5))
    rows = []
    for tag in tags:
        rows.append(
            ColonyRow(
                tag=tag,
                yard=draw(st.sampled_from(yard_codes)),
                hive_set=draw(st.sampled_from(HIVE_SETS)),
                strength=draw(st.sampled_from(["strong", "fair", "weak"])),
                origin=draw(st.sampled_from(["overwintered", "split", "nuc", "package", "swarm"])),
                started_on=None if rows else draw(st.none() | st.dates(**MONTHS)),
                mother=draw(st.sampled_from(["", *(row.tag for row in rows)])),
                supers=draw(st.integers(0, 6)),
                super_depth=draw(st.sampled_from(["deep", "medium", "shallow"])),
            )
        )
    return tuple(rows)


@st.composite
def sheets(draw):
    ground = draw(yards())
    codes = [yard.code for yard in ground]
    suppliers = tuple(
        SupplierRow(
            code=code,
            name=name,
            order_fee=draw(money()),
            free_from=draw(st.none() | money()),
            lead_weeks=draw(st.integers(0, 104)),
            complete=draw(st.booleans()),
        )
        for code, name in draw(named(80, 2))
    )
    flows = [
        FlowRow(
            yard=code,
            name=name,
            first_week=draw(st.integers(1, 53)),
            last_week=draw(st.integers(1, 53)),
            gain_lb=draw(tenths(99_999)),
            spread=draw(st.integers(0, 999).map(lambda number: Decimal(number) / 100)),
        )
        for code in codes
        for _, name in draw(named(60, 2))
    ]
    where = st.tuples(st.sampled_from(codes), st.sampled_from(PARTS), st.sampled_from(list(Condition)))
    places = draw(st.lists(where, unique=True, max_size=6))
    return Sheet(
        keeper=KeeperRow(
            name=draw(text(120, shortest=1)),
            address=draw(text(80)),
            region=draw(st.sampled_from(["", "north", "middle", "south"])),
            money=draw(st.sampled_from(["USD", "EUR", "NZD"])),
            truck_lb=draw(st.integers(0, 20_000)),
        ),
        yards=ground,
        flows=tuple(flows),
        colonies=draw(colonies(codes)),
        gear=tuple(
            GearRow(yard=yard, part=part, condition=condition.value, quantity=draw(st.integers(0, 10**6)))
            for yard, part, condition in places
        ),
        suppliers=suppliers,
        offers=tuple(offer for one in suppliers for offer in draw(offers(one.code))),
        winters=draw(winters(codes)),
    )


@st.composite
def winters(draw, yard_codes):
    rows = []
    for autumn in sorted(draw(st.sets(st.integers(1950, 2099), max_size=4))):
        went_in = draw(st.integers(1, 5000))
        yard, out = draw(st.sampled_from(["", *yard_codes])), draw(st.integers(0, went_in))
        rows.append(WinterRow(autumn=autumn, yard=yard, went_in=went_in, came_out=out))
    return tuple(rows)


@settings(max_examples=40, deadline=None, suppress_health_check=list(HealthCheck))
@given(sheets())
def test_any_sheet_written_into_the_template_reads_the_same(sheet):
    reading = read_sheet(filled(sheet, KNOWN), KNOWN)
    assert (reading.faults, reading.sheet) == ((), sheet)


@settings(max_examples=5, deadline=None, suppress_health_check=list(HealthCheck))
@given(sheets())
def test_a_sheet_written_without_the_catalogue_reads_the_same_by_codes(sheet):
    reading = read_sheet(filled(sheet), KNOWN)
    assert (reading.faults, reading.sheet) == ((), sheet)


def saved_by_office(office, folder, content, *, name="sheet", into="xlsx"):
    """The file as LibreOffice saves it again."""
    return all_saved_by_office(office, folder, {name: content}, into=into)[name]


def all_saved_by_office(office, folder, files, *, into="xlsx", kind="xlsx"):
    """Several files of a kind, saved again in one go, in a profile of its own: {name: bytes}."""
    target = folder / f"saved-{into}"
    sources = [folder / f"{name}.{kind}" for name in files]
    for source, content in zip(sources, files.values(), strict=True):
        source.write_bytes(content)
    profile = f"-env:UserInstallation={(folder / 'profile').as_uri()}"
    command = [
        office,
        profile,
        "--headless",
        "--convert-to",
        into,
        "--outdir",
        str(target),
        *map(str, sources),
    ]
    subprocess.run(command, check=True, capture_output=True, timeout=180)
    return {name: (target / f"{name}.{into}").read_bytes() for name in files}


@pytest.mark.office
def test_libreoffice_saves_a_filled_template_and_it_reads_the_same(office, tmp_path):
    saved = saved_by_office(office, tmp_path, filled(example(), KNOWN))
    reading = read_sheet(saved, KNOWN)
    assert (reading.faults, reading.sheet) == ((), example())


@pytest.mark.office
def test_a_formula_that_libreoffice_worked_out_is_read_by_its_value(office, tmp_path):
    from_keeper = altered({("Gear", "quantity", 2): "=40+2"})
    assert "never worked out" in read_sheet(from_keeper, KNOWN).faults[0].what
    reading = read_sheet(saved_by_office(office, tmp_path, from_keeper), KNOWN)
    assert reading.faults == () and reading.sheet.gear[0].quantity == 42


@pytest.mark.office
@pytest.mark.parametrize(
    "into, what",
    [("ods", "This is an OpenDocument file (.ods)"), ("xls", "This is an old workbook (.xls)")],
)
def test_what_libreoffice_saves_in_other_kinds_is_named(office, tmp_path, into, what):
    saved = saved_by_office(office, tmp_path, filled(example(), KNOWN), into=into)
    (fault,) = read_sheet(saved, KNOWN).faults
    assert fault.what == what
