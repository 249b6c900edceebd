"""The one door to the user's language. It knows no host: whoever has one hands its translation in (``speak_by``)."""

CONTEXT = "Tautline"

_TRANSLATE = [lambda context, text: text]
_LANGUAGE = ["en"]


def speak_by(translate, language="en"):
    """Have every text translated by ``translate(context, text)``, the host's own; until then texts are English.

    ``language``: the tag of what it answers in ('en', 'de', 'pt-BR'), which documents carry.
    """
    _TRANSLATE[0], _LANGUAGE[0] = translate, language


def tr(text):
    """Return ``text`` in the user's language."""
    return _TRANSLATE[0](CONTEXT, text)


def language():
    """The tag of the language that texts are in, as a document's ``lang``."""
    return _LANGUAGE[0]
