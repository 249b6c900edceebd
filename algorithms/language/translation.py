"""The one door to the user's language. It knows no host: whoever has one hands its translation in (``speak_by``)."""

CONTEXT = "Tautline"

_TRANSLATE = [lambda context, text: text]
_LANGUAGE = ["en"]
_POINT = ["."]


def speak_by(translate, language="en", point="."):
    """Have every text translated by ``translate(context, text)``, the host's own; until then texts are English.

    ``language``: the tag of what it answers in ('en', 'de', 'pt-BR'), which documents carry; ``point``: the decimal
    sign of numbers in its sentences and pages.
    """
    _TRANSLATE[0], _LANGUAGE[0], _POINT[0] = translate, language, point


def tr(text):
    """Return ``text`` in the user's language."""
    return _TRANSLATE[0](CONTEXT, text)


def translatable(text):
    """Mark a text of a table that ``tr`` is given where it is shown; it stays as it is."""
    return text


def language():
    """The tag of the language that texts are in, as a document's ``lang``."""
    return _LANGUAGE[0]


def decimal_sign():
    """The decimal sign of numbers in sentences and pages; what programs read has a point in every language."""
    return _POINT[0]
