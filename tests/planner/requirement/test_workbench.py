"""Recipes of the season: assembling with its small things, drawing with its token."""

from planner.requirement.tokens import DRAWING, RESTED
from planner.requirement.workbench import assembly_recipes, closure, drawing_recipes, evenings
from planner.sizing.records import Recipe


def test_a_box_takes_paint_fasteners_and_glue_and_a_frame_nails(season_gear):
    recipes = {recipe.code: recipe for recipe in assembly_recipes(season_gear())}
    box, frame = recipes["assemble-box-medium-10"].takes, recipes["assemble-frame-deep"].takes
    assert box.keys() == {"box-medium-10-flat", "paint", "fasteners", "glue"}
    assert frame.keys() == {"frame-deep-flat", "frame-nails", "glue"}
    assert recipes["fit-foundation-deep"].takes == {"frame-deep": 1, "foundation-deep": 1}
    assert recipes["assemble-box-medium-10"].work_minutes == 14


def test_bees_draw_a_framed_foundation_by_a_token(season_gear):
    wanted = {"comb-medium-honey", "comb-medium-brood", "comb-deep-brood", RESTED}
    recipes = {recipe.code: recipe for recipe in drawing_recipes(season_gear(), wanted)}
    assert recipes.keys() == {"draw-medium", "draw-medium-brood", "draw-deep", "rest"}
    assert recipes["draw-medium"].takes == {"frame-medium-foundation": 1, DRAWING: 1}
    assert recipes["draw-medium"].makes == {"comb-medium-honey": 1, RESTED: 1}
    assert list(drawing_recipes(season_gear(), {"comb-deep-brood"})) == []
    assert recipes["draw-deep"].cost > recipes["draw-medium"].cost > 0
    assert all(recipe.work_minutes == 0 for recipe in recipes.values())


def test_only_what_is_needed_is_made():
    recipes = [
        Recipe(code="saw", takes={"plank": 1}, makes={"side": 2}),
        Recipe(code="nail", takes={"side": 4}, makes={"box": 1}),
        Recipe(code="bake", takes={"flour": 1}, makes={"bread": 1}),
    ]
    needed, used = closure({"box"}, recipes)
    assert needed == {"box", "side", "plank"}
    assert [recipe.code for recipe in used] == ["saw", "nail"]


def test_evenings_by_hand(answers):
    work = evenings(answers(evenings_a_week=3, evening_hours=2, hour_value=12))
    assert work.minutes_per_period == (360,) * 52
    assert work.cost_per_hour == 12
