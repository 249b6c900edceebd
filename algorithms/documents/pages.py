"""Self-contained HTML pages that print well: everything that came from data is escaped, long tables repeat their
heading."""

from html import escape

from ..language.translation import tr

_CSS = """
:root{color-scheme:light}*{box-sizing:border-box}html{font-size:11pt}
body{font:1rem/1.45 "Helvetica Neue",Arial,"Liberation Sans",sans-serif;color:#1b1b1f;background:#fff;margin:0 auto;
padding:18px;max-width:62rem;overflow-wrap:break-word}h1{font-size:1.55rem;line-height:1.2;margin:0 0 .3rem}
h2{font-size:1.15rem;margin:1.5rem 0 .4rem;break-after:avoid}p{margin:.35rem 0}.lead{font-size:1.05rem}
.small,caption{font-size:.86rem;color:#45454d}
.caution{border:1px solid #1b1b1f;border-left-width:6px;padding:.5rem .8rem;margin:1rem 0;break-inside:avoid}
.warn{border-left:6px solid #b3400a;padding:.2rem .7rem;margin:.6rem 0;break-inside:avoid}.wide{overflow-x:auto}
table{border-collapse:collapse;width:100%;font-size:.86rem;margin:.4rem 0}
caption{text-align:left;padding-bottom:.25rem}
th,td{border:1px solid #9a9aa0;padding:.22rem .45rem;text-align:left;vertical-align:top}
th{background:#ececf0;vertical-align:bottom}thead th.n,thead th.k{white-space:normal}thead{display:table-header-group}
tr{break-inside:avoid}.n{text-align:right;font-variant-numeric:tabular-nums;white-space:nowrap}.k{white-space:nowrap}
.b{min-width:4.6em}tr.out td{background:#fdeee4}tr.quiet td{color:#5a5a63}tr.act td.k{font-weight:700}
table.facts{width:auto}table.facts th{background:none;font-weight:600;vertical-align:top}
table.facts td,table.facts th{border-width:0 0 1px}table.fill td{min-width:13em}
figure{margin:.8rem 0;break-inside:avoid}figure svg,figure img{max-width:100%;height:auto;display:block}
figcaption{font-size:.86rem;color:#45454d}
@page{size:A4;margin:14mm 12mm 16mm;@bottom-right{content:counter(page) " / " counter(pages);font:8pt sans-serif}}
.pair{display:flex;flex-wrap:wrap;gap:0 2.5rem;align-items:flex-start}@media print{html{font-size:9.5pt}
body{padding:0;max-width:none}.wide{overflow:visible}td,th{padding:.18rem .3rem}.b{min-width:4em}
th,tr.out td{-webkit-print-color-adjust:exact;print-color-adjust:exact}}
"""


def page(title, parts):
    """A whole page as bytes; ``parts``: pieces of HTML made by the functions below."""
    return (
        '<!DOCTYPE html>\n<html lang="en"><head><meta charset="utf-8">'
        '<meta name="viewport" content="width=device-width, initial-scale=1">'
        f"<title>{escape(title)}</title><style>{_CSS}</style></head><body>\n<h1>{escape(title)}</h1>\n"
        + "\n".join(parts)
        + "\n</body></html>\n"
    ).encode("utf-8")


def heading(text):
    return f"<h2>{escape(text)}</h2>"


def paragraph(text, kind=""):
    """``kind``: '', 'lead', 'small' or 'warn'."""
    return f'<p class="{kind}">{escape(text)}</p>' if kind else f"<p>{escape(text)}</p>"


def bullets(texts):
    return "<ul>" + "".join(f"<li>{escape(text)}</li>" for text in texts) + "</ul>"


def facts(pairs):
    """A small table of names and values."""
    return (
        '<table class="facts">'
        + "".join(f"<tr><th scope='row'>{escape(name)}</th><td>{escape(str(value))}</td></tr>" for name, value in pairs)
        + "</table>"
    )


def side_by_side(*parts):
    """Pieces beside each other where there is room."""
    return '<div class="pair">' + "".join(f"<div>{part}</div>" for part in parts) + "</div>"


def blanks(names):
    """Lines to be filled in by hand."""
    return (
        '<table class="facts fill">'
        + "".join(f"<tr><th scope='row'>{escape(name)}</th><td>&nbsp;</td></tr>" for name in names)
        + "</table>"
    )


def table(columns, rows, caption="", kinds=None):
    """A table. ``columns``: (heading, kind) with kind 'n' for numbers, 'k' for text that stays on one line, 'b' for
    room to write, '' for other text; ``rows``: lists of texts; ``kinds``: for each row '', 'act',
    'out' or 'quiet'."""
    head = "".join(f'<th scope="col" class="{kind}">{escape(name)}</th>' for name, kind in columns)
    body = []
    for number, row in enumerate(rows):
        marked = f' class="{kinds[number]}"' if kinds and kinds[number] else ""
        cells = "".join(
            f'<td class="{kind}">{escape(text)}</td>' if kind else f"<td>{escape(text)}</td>"
            for text, (_, kind) in zip(row, columns)
        )
        body.append(f"<tr{marked}>{cells}</tr>")
    title = f"<caption>{escape(caption)}</caption>" if caption else ""
    return (
        f'<div class="wide"><table>{title}<thead><tr>{head}</tr></thead><tbody>\n'
        + "\n".join(body)
        + "\n</tbody></table></div>"
    )


def figure(svg, caption):
    """A picture as inline SVG that carries its own description, see drawing code."""
    return f"<figure>{svg}<figcaption>{escape(caption)}</figcaption></figure>"


def cautions(*more):
    """The box that every page carries; ``more``: further sentences."""
    texts = (
        tr(
            "For review. Field work follows local codes, and a licensed surveyor or engineer decides what is raised, "
            "lowered or left."
        ),
        *more,
    )
    return (
        '<div class="caution"><strong>'
        + escape(tr("Caution"))
        + "</strong>"
        + "".join(paragraph(text) for text in texts)
        + "</div>"
    )
