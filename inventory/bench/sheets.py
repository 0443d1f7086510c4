"""How fast a large sheet is written and read back: opening stock of many yards, one row a part, invented.

Takes how many rows; gives the records, and seconds and memory of both ways. Knows no table.
"""

import resource
import time

from inventory.sheets import GearRow, Known, Sheet, filled, read_sheet

PARTS = 80


def invented_stock(rows):
    """(Sheet, Known) of so many rows of gear."""
    parts = {f"part-{number}": f"Invented part {number}, 10 frames" for number in range(PARTS)}
    yards = {f"yard-{number}": f"Invented yard {number}" for number in range(-(-rows // PARTS))}
    places = [(yard, part) for yard in yards for part in parts][:rows]
    gear = tuple(
        GearRow(yard=yard, part=part, quantity=number * 7 % 500) for number, (yard, part) in enumerate(places)
    )
    return Sheet(gear=gear), Known(parts=parts, yards=yards, shed="yard-0", has_keeper=True)


def there_and_back(*, rows):
    """Seconds by the clock and of the processor of writing and of reading, peak memory, rows read the same."""
    sheet, known = invented_stock(rows)
    content, wrote, wrote_cpu = timed(lambda: filled(sheet, known, kind="opening"))
    reading, read, read_cpu = timed(lambda: read_sheet(content, known))
    same = reading.sheet is not None and reading.sheet.gear == sheet.gear
    return {
        "write": wrote,
        "write_cpu": wrote_cpu,
        "read": read,
        "read_cpu": read_cpu,
        "megabytes": resource.getrusage(resource.RUSAGE_SELF).ru_maxrss / 1024,
        "lost": 0 if same else rows,
    }


def timed(act):
    """(result, seconds by the clock, seconds of the processor)."""
    clock, processor = time.perf_counter(), time.process_time()
    result = act()
    return result, time.perf_counter() - clock, time.process_time() - processor
