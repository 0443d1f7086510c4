"""Addresses as pictures: drawn the same for the same address, white behind, and the machine itself told apart."""

import re
from urllib.parse import unquote

import pytest

from apiary.pictures import address_as_image, is_this_machine, picture_of


def test_a_picture_is_one_svg_with_its_name_and_a_white_ground():
    picture = picture_of("bees.example/yards/creek/", "Yard Creek & Hill")
    assert picture.startswith("<svg") and picture.rstrip().endswith("</svg>")
    assert "<title>Yard Creek &amp; Hill</title>" in picture
    assert "#fff" in picture and "style=" not in picture and "<script" not in picture


def test_another_address_is_another_picture():
    one, two = (picture_of(f"bees.example/yards/{code}/", "Yard") for code in ("creek", "hill"))
    assert one != two
    assert one == picture_of("bees.example/yards/creek/", "Yard")


def test_as_an_image_it_needs_no_file_and_shows_the_same_modules():
    address = "bees.example/yards/creek/"
    image, drawing = address_as_image(address), picture_of(address, "Yard")
    assert image.startswith("data:image/svg+xml")
    path = re.search(r'class="qrline"[^>]* d="([^"]+)"', drawing).group(1)
    assert path in unquote(image)


@pytest.mark.parametrize(
    "host", ["localhost", "localhost:8000", "127.0.0.1:80", "[::1]", "[::1]:8000", "LOCALHOST"]
)
def test_the_machine_itself_is_known(host):
    assert is_this_machine(host)


@pytest.mark.parametrize("host", ["bees.example", "192.168.1.7:8000", "[fe80::1]:8000", "shed.local"])
def test_other_hosts_are_not(host):
    assert not is_this_machine(host)
