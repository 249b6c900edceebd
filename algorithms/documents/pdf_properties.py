"""What a PDF tells of itself beside its pages: author, language, and that its title is what a window shows."""

import re


def with_properties(pdf, *, author="", language=""):
    """The file (bytes) with its ``author`` and ``language`` (a tag as 'en'), which the writers of our hosts cannot be
    told; as it is where it has no plain table of its objects.

    It is changed as PDF files are: what is new stands at the end, with a table of where it is and a trailer that names
    the table before. Source: ISO 32000-1, 7.5.6 (incremental updates), 14.9.2 (language), 12.2 (title in the window).
    """
    try:
        trailer = pdf[pdf.rindex(b"trailer") :]
        root, info, size, before = (
            int(re.search(pattern, trailer)[1])
            for pattern in (rb"/Root (\d+)", rb"/Info (\d+)", rb"/Size (\d+)", rb"startxref\s+(\d+)")
        )
        catalog, told = _dictionary(pdf, root), _dictionary(pdf, info)
    except (ValueError, TypeError):
        return pdf
    new = {}
    if language and b"/Lang" not in catalog:
        new[root] = catalog + b"/Lang (%s)\n/ViewerPreferences << /DisplayDocTitle true >>\n" % _tag(language)
    if author and b"/Author" not in told:
        new[info] = told + b"/Author %s\n" % _text(author)
    if not new:
        return pdf
    written, places = pdf, b""
    for number, inside in sorted(new.items()):
        places += b"%d 1\n%010d 00000 n \n" % (number, len(written))
        written += b"%d 0 obj\n<<\n%s>>\nendobj\n" % (number, inside)
    end = b"trailer\n<<\n/Size %d\n/Info %d 0 R\n/Root %d 0 R\n/Prev %d\n>>\n" % (size, info, root, before)
    return written + b"xref\n" + places + end + b"startxref\n%d\n%%%%EOF\n" % len(written)


def _dictionary(pdf, number):
    """What stands in the dictionary that is the object ``number``, its last version; ValueError where it is none."""
    start = pdf.rindex(b"\n%d 0 obj" % number)
    whole = pdf[start : pdf.index(b"endobj", start)]
    return whole[whole.index(b"<<") + 2 : whole.rindex(b">>")].strip() + b"\n"


def _tag(language):
    """A language as PDF has it: letters, figures and hyphens alone."""
    return re.sub("[^A-Za-z0-9-]", "", language).encode("ascii")


def _text(text):
    """A text as PDF has it in any script, UTF-16 in hexadecimals."""
    return b"<feff%s>" % text.encode("utf-16-be", "ignore").hex().encode("ascii")
