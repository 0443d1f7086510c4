"""The smallest fleet that serves jobs with fixed times: uses that keep one unit from first to last.

Takes intervals [start, end); gives the problem file. A unit costs 1, so the least cost is the fleet. Times are
scaled to whole periods; half-open, so `last` is the period before the end.
"""


def fleet(data):
    intervals = data["intervals"]
    scale = 1 if all(float(time).is_integer() for pair in intervals for time in pair) else 2
    start = min(first for first, _ in intervals)
    periods = round((max(end for _, end in intervals) - start) * scale)
    return {
        "periods": periods,
        "parts": [{"code": "room"}],
        "locations": ["hall"],
        "suppliers": [{"code": "builder"}],
        "offers": [
            {"code": "room", "supplier": "builder", "parts": {"room": 1}}
            | {"prices": [{"from_packs": 1, "price": 1}]}
        ],
        "scenarios": [
            {
                "code": "known",
                "probability": 1,
                "uses": [
                    {"code": f"job-{k}", "location": "hall", "units": 1, "value": 0, "must": True}
                    | {"first": round((first - start) * scale), "last": round((end - start) * scale) - 1}
                    | {"keeps": {"room": 1}}
                    for k, (first, end) in enumerate(intervals)
                ],
            }
        ],
    }


def shifts(data, *, whole):
    """A week of shifts, each so many days running: the shift that starts on day d is a kit of its day parts, and
    each day's requirement a must-use that spends that day's part."""
    days = len(data["required"])
    return {
        "periods": 1,
        "parts": [{"code": f"day-{d}"} for d in range(days)],
        "locations": ["office"],
        "suppliers": [{"code": "staff"}],
        "offers": [
            {"code": f"starts-{d}", "supplier": "staff", "whole": whole}
            | {"parts": {f"day-{(d + k) % days}": 1 for k in range(data["run"])}}
            | {"prices": [{"from_packs": 1, "price": 1}]}
            for d in range(days)
        ],
        "scenarios": [
            {
                "code": "known",
                "probability": 1,
                "uses": [
                    {"code": f"day-{d}", "location": "office", "first": 0, "last": 0, "must": True}
                    | {"units": units, "value": 0, "spends": {f"day-{d}": 1}}
                    for d, units in enumerate(data["required"])
                ],
            }
        ],
    }
