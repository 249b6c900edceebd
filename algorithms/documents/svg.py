"""Drawings of the chart library as SVG that says what it shows, for a file of its own or within a page."""

import re
from xml.etree import ElementTree

_SVG, _LINK = "http://www.w3.org/2000/svg", "http://www.w3.org/1999/xlink"
# What XML 1.0 has no place for, and what HTML forbids beside it: control characters, halves of pairs, non-characters.
FORBIDDEN = re.compile("[\x00-\x08\x0b\x0c\x0e-\x1f\x7f-\x9f\ud800-\udfff\ufdd0-\ufdef\ufffe\uffff]")


def svg_element(text, alt, prefix=""):
    """The drawing ``text`` (a whole SVG file or element) as one element, named ``alt``; what it holds beside the
    drawing (comments, metadata) is left out. ``prefix``: of all its ids, so that several can stand in one page.
    """
    return ElementTree.tostring(_tree(text, alt, prefix), encoding="unicode")


def svg_file(text, alt):
    """The drawing as a file of its own, bytes in UTF-8."""
    return ElementTree.tostring(_tree(text, alt, ""), encoding="utf-8", xml_declaration=True)


def _tree(text, alt, prefix):
    ElementTree.register_namespace("", _SVG)
    ElementTree.register_namespace("xlink", _LINK)
    root = ElementTree.fromstring(FORBIDDEN.sub("", text))
    for found in root.findall(f"{{{_SVG}}}metadata"):
        root.remove(found)
    root.set("role", "img")
    root.set("aria-label", FORBIDDEN.sub("", alt))
    if prefix:
        for part in root.iter():
            for name, value in part.items():
                if name == "id":
                    part.set(name, prefix + value)
                elif name == f"{{{_LINK}}}href" and value.startswith("#"):
                    part.set(name, f"#{prefix}{value[1:]}")
                elif "url(#" in value:
                    part.set(name, value.replace("url(#", f"url(#{prefix}"))
    return root
