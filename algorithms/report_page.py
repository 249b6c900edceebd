"""The review report for the screen: one HTML file, nothing outside it."""

from base64 import b64encode
from html import escape

from . import pages
from .report_blocks import Caution, Code, Facts, Heading, Map, Paragraph, Picture, Signatures, Table
from .texts import tr

_LOOK = """<style>
.strong{font-weight:600;margin-top:1rem}.lead{background:#f3f4f6;border-left:6px solid #1b1b1f;padding:.6rem .9rem}
figure.map img,figure.map svg,figure svg{width:100%;max-width:46rem}
ul.legend{list-style:none;padding:0;margin:.5rem 0;display:flex;flex-wrap:wrap;gap:.2rem 1.4rem;font-size:.86rem}
ul.legend img{width:1.5rem;height:1.5rem;vertical-align:middle;margin-right:.3rem}
pre{background:#f3f4f6;padding:.7rem .9rem;font-size:.76rem;white-space:pre-wrap;overflow-wrap:anywhere;border-radius:3px}
table.sign td.line{min-width:11em;border-bottom:1px solid #1b1b1f}table.facts th{min-width:8.5em}.small{margin:.3rem 0}
table.sign{width:auto}table.sign th,table.sign td{border-width:0 0 1px;background:none;padding:.45rem .6rem .25rem 0}
@media(max-width:480px){body{padding:12px}table.facts th{min-width:6.5em}}
@media print{figure.map img{max-width:150mm}h2{margin-top:1rem}}
</style>"""


def screen_document(title, blocks):
    """The page as bytes."""
    return pages.page(title, [_LOOK, *(_WRITERS[type(block)](block) for block in blocks)])


def _heading(block):
    return pages.heading(block.text) if block.level == 2 else f'<h3 class="strong">{escape(block.text)}</h3>'


def _signatures(block):
    rows = "".join(f"<tr><th scope='row'>{escape(role)}</th><td>{escape(name)}</td><td class='line small'>{escape(tr('signature, date'))}"
                   "</td></tr>" for role, name in block.people)
    return pages.facts(block.facts) + f'<table class="sign">{rows}</table>'


def _table(block):
    kinds = {"n": "n", "k": "k", "": ""}
    return pages.table([(column.heading, kinds[column.kind]) for column in block.columns], block.rows, block.caption, block.kinds or None)


def _data(image, kind):
    return f"data:image/{kind};base64,{b64encode(image).decode('ascii')}"


def _map(block):
    legend = "".join(f'<li><img src="{_data(image, "png")}" alt="">{escape(text)}</li>' for text, image in block.legend)
    return (f'<figure class="map"><img src="{_data(block.image, block.kind)}" alt="{escape(block.alt)}">'
            f'<ul class="legend">{legend}</ul><figcaption>{escape(block.caption)}</figcaption></figure>')


def _code(block):
    return f'<h3 class="strong">{escape(block.caption)}</h3><pre>{escape(block.text)}</pre>'


def _caution(block):
    return '<div class="caution"><strong>' + escape(tr("Caution")) + "</strong>" + "".join(
        pages.paragraph(text) for text in block.texts) + "</div>"


_WRITERS = {Heading: _heading, Paragraph: lambda block: pages.paragraph(block.text, block.kind), Facts: lambda block: pages.facts(block.pairs),
            Signatures: _signatures, Table: _table, Picture: lambda block: pages.figure(block.svg, block.caption), Map: _map, Code: _code,
            Caution: _caution}
