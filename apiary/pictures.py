"""An address as a picture for a phone's camera.

Takes the address and what to call it; gives an SVG. Asks nothing of anyone.
"""

import io

import segno
from django.utils.safestring import mark_safe

THIS_MACHINE = ("localhost", "127.0.0.1", "[::1]", "0.0.0.0")
QUIET = 4  # modules of free edge around a picture: ISO/IEC 18004 asks for four, from memory


def picture_of(address, title):
    """Dark on white in any light, with the quiet edge a camera needs."""
    drawn = io.BytesIO()
    _drawn(address).save(
        drawn,
        kind="svg",
        scale=4,
        border=QUIET,
        light="#fff",
        xmldecl=False,
        svgns=False,
        title=title,
        omitsize=True,
    )
    return mark_safe(drawn.getvalue().decode())


def address_as_image(address):
    """The same picture as the source of an image: a head that is told again on each page shows no drawing twice."""
    return _drawn(address).svg_data_uri(
        scale=4, border=QUIET, light="#fff", omitsize=False, encode_minimal=True
    )


def _drawn(address):
    return segno.make(address, micro=False, error="m")


def is_this_machine(host):
    """True for a host that means the machine itself: no phone finds it there."""
    name = host if host.endswith("]") else host.rpartition(":")[0] or host
    return name.lower() in THIS_MACHINE
