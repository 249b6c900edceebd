"""Pages for the screen and the printer: one HTML file each, nothing outside it, from a list of blocks."""

from base64 import b64encode
from itertools import count
from pathlib import Path

from ..core.errors import InputError
from ..language.translation import language, tr
from .svg import FORBIDDEN, svg_element

TEMPLATES = Path(__file__).resolve().parent / "templates"


def html_page(title, blocks, *, across=False):
    """The page as bytes (UTF-8): ``title`` as its heading, then ``blocks`` in their order; ``across``: printed on paper
    that lies on its long side.

    The template escapes all texts; characters that HTML forbids are dropped. InputError where jinja2 is missing.
    """
    try:
        from jinja2 import Environment, FileSystemLoader, StrictUndefined
    except ImportError:
        raise InputError(
            tr(
                "HTML pages need jinja2 in QGIS's own Python (python3-jinja2 on Debian and Ubuntu); leave the page "
                "empty to go without."
            )
        ) from None
    environment = Environment(
        loader=FileSystemLoader(str(TEMPLATES)),
        autoescape=True,
        trim_blocks=True,
        lstrip_blocks=True,
        undefined=StrictUndefined,
    )
    drawings = count(1)
    environment.filters["kind"] = lambda block: type(block).__name__
    environment.globals["no_macro_for"] = _no_macro_for
    # The only markup that is not the template's: our own drawings, parsed and written anew.
    environment.filters["drawing"] = lambda block: _Drawing(svg_element(block.svg, block.alt, f"d{next(drawings)}-"))
    environment.filters["data_url"] = _data_url
    text = environment.get_template("page.html").render(
        title=title, blocks=blocks, language=language(), tr=tr, across=across
    )
    return FORBIDDEN.sub("", text).encode("utf-8")


class _Drawing:
    """A drawing of our own as the template takes it: markup already."""

    def __init__(self, svg):
        self._svg = svg

    def __html__(self):
        return self._svg


def _no_macro_for(kind):
    raise TypeError(f"The template page.html has no macro for the block {kind}.")


def _data_url(image, kind):
    return f"data:image/{kind};base64,{b64encode(image).decode('ascii')}"
