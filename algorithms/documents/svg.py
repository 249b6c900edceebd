"""Drawings of the chart library as SVG that says what it shows, for a file of its own or within a page."""

import re

from qgis.PyQt.QtCore import QByteArray, QXmlStreamReader, QXmlStreamWriter

# What XML 1.0 has no place for, and what HTML forbids beside it: control characters, halves of pairs, non-characters.
FORBIDDEN = re.compile("[\x00-\x08\x0b\x0c\x0e-\x1f\x7f-\x9f\ud800-\udfff\ufdd0-\ufdef\ufffe\uffff]")
_XML = '<?xml version="1.0" encoding="utf-8"?>\n'


def svg_element(text, alt, prefix=""):
    """The drawing ``text`` (a whole SVG file or element) as one element, named ``alt``; what it holds beside the
    drawing (comments, metadata) is left out. ``prefix``: of all its ids, so that several can stand in one page.
    ValueError where it is no drawing.
    """
    given = QXmlStreamReader(FORBIDDEN.sub("", text))
    # Prefixes stay as they are written: a drawing within a page has those of the page.
    given.setNamespaceProcessing(False)
    made = QByteArray()
    writer, depth = QXmlStreamWriter(made), 0
    while not given.atEnd():
        token = given.readNext()
        if token == QXmlStreamReader.TokenType.StartElement:
            name = given.qualifiedName()
            if depth == 1 and name == "metadata":
                given.skipCurrentElement()
                continue
            attributes = {one.qualifiedName(): one.value() for one in given.attributes()}
            if depth == 0:
                if name != "svg":
                    raise ValueError("The drawing is no SVG.")
                attributes.update({"role": "img", "aria-label": FORBIDDEN.sub("", alt)})
            writer.writeStartElement(name)
            for key, value in attributes.items():
                writer.writeAttribute(key, _set_apart(key, value, prefix))
            depth += 1
        elif token == QXmlStreamReader.TokenType.EndElement:
            writer.writeEndElement()
            depth -= 1
        elif token == QXmlStreamReader.TokenType.Characters and depth:
            writer.writeCharacters(given.text())
    if given.hasError() or made.isEmpty():
        raise ValueError(f"The drawing is no SVG: {given.errorString()}")
    return bytes(made).decode("utf-8")


def svg_file(text, alt):
    """The drawing as a file of its own, bytes in UTF-8."""
    return (_XML + svg_element(text, alt)).encode("utf-8")


def _set_apart(key, value, prefix):
    """The value of an attribute where all ids of the drawing have a prefix."""
    if key == "id":
        return prefix + value
    if key in ("xlink:href", "href") and value.startswith("#"):
        return f"#{prefix}{value[1:]}"
    return value.replace("url(#", f"url(#{prefix}")
