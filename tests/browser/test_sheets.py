"""Every sheet of apiary in a real browser: widths, dark and light, silence in the console, accessibility."""

import pytest
from django.urls import reverse

from apiary.models import Colony
from tests.browser.conftest import WIDTHS, sideways, violations

pytestmark = [pytest.mark.browser, pytest.mark.django_db(transaction=True)]


def addresses():
    live, dead = Colony.objects.get(tag="F-01"), Colony.objects.get(tag="F-10")
    words = [reverse(name) for name in ("home", "yards", "more")]
    yards = [reverse("yard", args=[code]) for code in ("fern-hollow", "long-acre", "shed")]
    return [*words, *yards, reverse("colony", args=[live.pk]), reverse("colony", args=[dead.pk])]


def test_no_sheet_scrolls_sideways_or_complains(sheet, live_server):
    wrong = []
    for address in addresses():
        for width in WIDTHS:
            sheet.set_viewport_size({"width": width, "height": 844})
            sheet.goto(live_server.url + address)
            if sideways(sheet) > 0:
                wrong.append(f"{address} at {width}: {sideways(sheet)} px too wide")
    assert (wrong, sheet.said) == ([], [])


@pytest.mark.parametrize(
    ("scheme", "width"),
    [
        ("light", 390),
        ("dark", 1440),
        pytest.param("dark", 390, marks=pytest.mark.long),
        pytest.param("light", 1440, marks=pytest.mark.long),
    ],
)
def test_every_sheet_is_accessible(sheet, live_server, scheme, width):
    sheet.emulate_media(color_scheme=scheme)
    sheet.set_viewport_size({"width": width, "height": 900})
    found = {}
    for address in addresses():
        sheet.goto(live_server.url + address)
        if faults := violations(sheet):
            found[address] = faults
    assert found == {}


def test_the_door_is_accessible_and_quiet(page, live_server, transactional_db):
    said = []
    page.on("console", lambda message: said.append(message.text))
    page.goto(live_server.url + reverse("sign-in"))
    assert violations(page) == []
    assert said == []


def test_phone_ruler_is_at_the_bottom_and_desktop_ruler_on_top(sheet, live_server):
    ruler = sheet.get_by_role("navigation", name="Sheets")
    sheet.set_viewport_size({"width": 390, "height": 844})
    sheet.goto(live_server.url + reverse("yards"))
    place = ruler.bounding_box()
    assert place["y"] + place["height"] == 844
    words = ruler.get_by_role("link").all_inner_texts()
    assert (words[:2], words[-1]) == (["This week", "Yards"], "More")
    assert len(words) <= 5 and "Load a sheet" not in words
    sheet.set_viewport_size({"width": 1440, "height": 900})
    assert ruler.bounding_box()["y"] < 200
    assert "More" not in ruler.get_by_role("link").all_inner_texts()
    assert "Load a sheet" in ruler.get_by_role("link").all_inner_texts()
    current = ruler.get_by_role("link", name="Yards")
    assert current.get_attribute("aria-current") == "page"


def test_stacks_stand_on_one_ground_line_four_a_row_on_a_phone(sheet, live_server):
    for width, in_a_row in ((390, 4), (1440, 8)):
        sheet.set_viewport_size({"width": width, "height": 900})
        sheet.goto(live_server.url + reverse("yard", args=["fern-hollow"]))
        boxes = [each.bounding_box() for each in sheet.locator(".stack > svg").all()]
        feet = [round(box["y"] + box["height"]) for box in boxes]
        assert len(boxes) == 10
        assert len(set(feet[:in_a_row])) == 1
        assert feet[in_a_row] > feet[0]


def test_stacks_of_a_row_share_one_scale(sheet, live_server):
    """Two deeps are 308/16 in of wood: the same on screen for every colony, in proportion to one deep."""
    sheet.set_viewport_size({"width": 1440, "height": 900})
    sheet.goto(live_server.url + reverse("yard", args=["fern-hollow"]))
    stacks = sheet.locator(".stack > svg")
    scales = {
        round(stack.bounding_box()["height"] / float(stack.get_attribute("viewBox").split()[3]), 3)
        for stack in stacks.all()
    }
    assert len(scales) == 1


def test_a_stack_leads_to_its_colony_and_back_to_its_yard(sheet, live_server):
    sheet.goto(live_server.url + reverse("yard", args=["fern-hollow"]))
    sheet.get_by_role("link", name="F-03").first.click()
    assert sheet.get_by_role("heading", level=1).inner_text() == "F-03"
    sheet.get_by_role("navigation", name="Sheets").get_by_role("link", name="Yards").click()
    assert sheet.get_by_role("heading", level=1).inner_text() == "Yards"


def test_the_keyboard_reaches_the_sheet_at_once(sheet, live_server):
    sheet.goto(live_server.url + reverse("yards"))
    sheet.keyboard.press("Tab")
    assert sheet.evaluate("document.activeElement.textContent") == "Skip to the sheet"
    sheet.keyboard.press("Enter")
    assert sheet.evaluate("document.activeElement.id") == "content"


def test_at_twice_the_text_nothing_is_fixed_and_nothing_scrolls_sideways(sheet, live_server):
    """A phone of 390 px with text at 200 % is as wide in letters as one of 195 px."""
    sheet.set_viewport_size({"width": 195, "height": 844})
    for address in addresses():
        sheet.goto(live_server.url + address)
        place = sheet.get_by_role("navigation", name="Sheets")
        assert place.evaluate("element => getComputedStyle(element).position") == "static"
        assert sideways(sheet) == 0, address


def test_a_signed_out_person_is_back_at_the_door(sheet, live_server):
    sheet.get_by_role("button", name="Sign out").click()
    assert sheet.get_by_role("heading", level=1).inner_text() == "Sign in"
