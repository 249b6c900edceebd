"""The one door to the user's language. It knows no host: whoever has one hands its translation in (``speak_by``)."""

CONTEXT = "Tautline"

_TRANSLATE = [lambda context, text: text]


def speak_by(translate):
    """Have every text translated by ``translate(context, text)``, the host's own; until then texts are English."""
    _TRANSLATE[0] = translate


def tr(text):
    """Return ``text`` in the user's language."""
    return _TRANSLATE[0](CONTEXT, text)
