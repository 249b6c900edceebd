"""The one error of the core, and sentences that a user reads in any language."""


class Word(str):
    """A word of the core among the values of a refusal: it is translated, while what the user wrote is not."""


class Length(float):
    """A length in metres among the values of a sentence; who words it for a run tells it in the run's unit."""

    def __format__(self, spec):
        return f"{float(self):.3f}".rstrip("0").rstrip(".") + " m"


class Chainage(Length):
    """A chainage in metres among them; who words it for a run writes it as a station."""


class Sentence(str):
    """A sentence of the core that refuses nothing, in English; ``text`` and ``values`` as of an InputError."""

    def __new__(cls, text, *values):
        made = super().__new__(cls, text.format(*values) if values else text)
        made.text, made.values = text, values
        return made

    def refused(self):
        """The sentence as an InputError."""
        return InputError(self.text, *self.values)


class InputError(ValueError):
    """What was given cannot be computed; the message is one sentence for the user.

    ``text``: one literal with {} places, which ``values`` fill in; without values it is the sentence, whatever braces
    it has. str() is the sentence in English; who shows it asks ``worded`` (``algorithms/language/core_sentences.py``)
    for that in the user's language. ``code``: a code of ``algorithms/entry/messages.py``, '' where nobody acts on it.
    ``keys``: names of the parameters that the sentence is about, that to be looked at first before the others. The host
    side turns it into its own processing error in ``algorithms/entry/refusals.py`` and nowhere else.
    """

    def __init__(self, text="", *values, code="", keys=()):
        super().__init__(text.format(*values) if values else text)
        self.text, self.values = text, values
        self.code, self.keys = code, tuple(keys)

    def reworded(self, text):
        """The same refusal, with its code and keys (texts, without unit), in another sentence, worded already."""
        return InputError(text, code=self.code, keys=self.keys)
