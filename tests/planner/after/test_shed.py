"""What the shed answers: shelf before bench, in time before late, materials counted once, the rest short."""

from planner.after.shed import GIVE_UP_WEEKS, Made, Shed, Want

BOX, FLAT = "box", "box-flat"
RECIPES = {
    BOX: Made(recipe="assemble", part=BOX, takes={FLAT: 1}, minutes=14),
    "frame": Made(recipe="nail", part="frame", takes={"frame-flat": 1}, minutes=3),
    "framed": Made(recipe="fit", part="framed", takes={"frame": 1, "sheet": 1}, minutes=2),
}


def shed(*rows, drawn=None):
    made = Shed(recipes=RECIPES, drawn=drawn or {})
    for part, week, pieces in rows:
        made.put(part, week, pieces)
    return made


def want(part, pieces, week, yard="creek"):
    return Want(yard=yard, part=part, pieces=pieces, week=week)


def told(chunks):
    return [(chunk.part, chunk.pieces, chunk.ready, chunk.job) for chunk in chunks]


def test_the_shelf_goes_before_the_bench():
    chunks, short = shed((BOX, 0, 5), (FLAT, 2, 5)).answer([want(BOX, 8, 6)])
    assert told(chunks) == [(BOX, 5, 0, None), (BOX, 3, 2, 0)]
    assert short == []


def test_a_job_is_due_before_the_week_it_is_loaded_in():
    there = shed((FLAT, 2, 5))
    there.answer([want(BOX, 3, 6)])
    job = there.jobs[0]
    assert (job.code, job.units, job.minutes, job.release, job.due) == ("assemble", 3, 14, 2, 5)


def test_who_wants_first_is_answered_first_and_the_rest_is_short():
    chunks, short = shed((BOX, 0, 5)).answer([want(BOX, 4, 9, "hill"), want(BOX, 4, 3)])
    assert [(chunk.want.yard, chunk.pieces) for chunk in chunks] == [("creek", 4), ("hill", 1)]
    assert short == [(want(BOX, 4, 9, "hill"), 3)]


def test_what_comes_late_is_taken_after_all_that_is_in_time():
    chunks, _short = shed((BOX, 7, 5), (FLAT, 1, 2)).answer([want(BOX, 4, 6)])
    assert told(chunks) == [(BOX, 2, 1, 0), (BOX, 2, 7, None)]


def test_what_comes_long_after_it_was_wanted_is_not_brought_any_more():
    chunks, short = shed((BOX, 7 + GIVE_UP_WEEKS, 5)).answer([want(BOX, 4, 6)])
    assert chunks == [] and short == [(want(BOX, 4, 6), 4)]


def test_a_comb_that_is_not_there_goes_as_foundation_to_be_drawn():
    chunks, _short = shed(("comb", 0, 2), ("framed", 0, 9), drawn={"comb": "framed"}).answer(
        [want("comb", 6, 4)]
    )
    assert told(chunks) == [("comb", 2, 0, None), ("framed", 4, 0, None)]


def test_a_framed_sheet_is_nailed_first_and_waits_for_the_later_of_its_materials():
    there = shed(("frame-flat", 1, 9), ("sheet", 3, 9))
    chunks, _short = there.answer([want("framed", 6, 8)])
    assert [(job.code, job.units, job.release, job.due) for job in there.jobs] == [
        ("nail", 6, 1, 7),
        ("fit", 6, 3, 7),
    ]
    assert there.jobs[0].order < there.jobs[1].order
    assert told(chunks) == [("framed", 6, 3, 1)]


def test_no_more_is_begun_than_every_material_allows():
    there = shed(("frame-flat", 0, 9), ("sheet", 0, 4))
    chunks, short = there.answer([want("framed", 6, 8)])
    assert (chunks[0].pieces, short[0][1]) == (4, 2)
    assert sum(pieces for _week, pieces in there.supply["frame-flat"]) == 5
