"""The review report for the screen: one HTML file, nothing outside it."""

from base64 import b64encode
from html import escape

from ..language.translation import tr
from . import pages
from .blocks import Caution, Code, Facts, Heading, Map, Paragraph, Picture, Signatures, Table

_LOOK = """<style>
h3{font-size:1rem;margin:1.1rem 0 .3rem;break-after:avoid}
.lead{background:#f3f4f6;border-left:6px solid #1b1b1f;padding:.6rem .9rem}
figure.map img.map,figure>svg{width:100%;max-width:46rem}
ul.legend{list-style:none;padding:0;margin:.5rem 0;display:flex;flex-wrap:wrap;gap:.2rem 1.4rem;font-size:.86rem}
figure.map ul.legend img{display:inline-block;width:1.4rem;height:1.4rem;vertical-align:middle;margin-right:.3rem}
pre{background:#f3f4f6;padding:.7rem .9rem;font-size:.76rem;white-space:pre;overflow-x:auto;border-radius:3px}
.wide td:last-child:not(.n){min-width:10em}.wide td:first-child{white-space:nowrap}
table.facts th{min-width:8.5em}table.sign{width:auto;max-width:100%}
table.sign th,table.sign td{border:0;background:none;padding:1.5rem .8rem 0 0;vertical-align:bottom}
table.sign td.line{min-width:14em}
table.sign span{display:block;border-top:1px solid #1b1b1f;font-size:.75rem;color:#45454d}
@media(max-width:480px){body{padding:12px}table.facts th{min-width:6.5em}table.sign td.line{min-width:7em}}
@media print{figure.map img.map{max-width:150mm;max-height:125mm;width:auto}figure>svg{max-width:150mm}
h2{margin-top:1rem}pre{white-space:pre-wrap;overflow-wrap:anywhere}
.lead,pre{-webkit-print-color-adjust:exact;print-color-adjust:exact}}
</style>"""


def screen_document(title, blocks):
    """The page as bytes."""
    return pages.page(title, [_LOOK, *(_WRITERS[type(block)](block) for block in blocks)])


def _heading(block):
    return pages.heading(block.text) if block.level == 2 else f"<h3>{escape(block.text)}</h3>"


def _paragraph(block):
    if not block.strong:
        return pages.paragraph(block.text, block.kind)
    return f'<p class="{block.kind}"><strong>{escape(block.strong)}</strong> {escape(block.text)}</p>'


def _signatures(block):
    line = f"<td class='line'><span>{escape(tr('signature, date'))}</span></td>"
    rows = "".join(
        f"<tr><th scope='row'>{escape(role)}</th><td>{escape(name)}</td>{line}</tr>" for role, name in block.people
    )
    return pages.facts(block.facts) + f'<table class="sign">{rows}</table>'


def _table(block):
    # The caption stands before the table: in it, it would scroll away with it on a narrow screen.
    caption = pages.paragraph(block.caption, "small") if block.caption else ""
    columns = [(column.heading, column.kind) for column in block.columns]
    return caption + pages.table(columns, block.rows, "", block.kinds or None)


def _data(image, kind):
    return f"data:image/{kind};base64,{b64encode(image).decode('ascii')}"


def _map(block):
    legend = "".join(f'<li><img src="{_data(image, "png")}" alt="">{escape(text)}</li>' for text, image in block.legend)
    return (
        f'<figure class="map"><img class="map" src="{_data(block.image, block.kind)}" alt="{escape(block.alt)}">'
        f'<ul class="legend">{legend}</ul><figcaption>{escape(block.caption)}</figcaption></figure>'
    )


def _code(block):
    return f"<h3>{escape(block.caption)}</h3><pre>{escape(block.text)}</pre>"


def _caution(block):
    return (
        '<div class="caution"><strong>'
        + escape(tr("Caution"))
        + "</strong>"
        + "".join(pages.paragraph(text) for text in block.texts)
        + "</div>"
    )


_WRITERS = {
    Heading: _heading,
    Paragraph: _paragraph,
    Facts: lambda block: pages.facts(block.pairs),
    Signatures: _signatures,
    Table: _table,
    Picture: lambda block: pages.figure(block.svg, block.caption),
    Map: _map,
    Code: _code,
    Caution: _caution,
}
