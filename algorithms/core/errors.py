"""The one error of the core."""


class InputError(ValueError):
    """What was given cannot be computed; the message is one sentence for the user.

    ``code``: a code of ``algorithms/entry/messages.py``, '' where nobody acts on it. ``keys``: names of the parameters
    that the sentence is about, that to be looked at first before the others. The host side turns it into its own
    processing error in ``algorithms/entry/base.py`` and nowhere else.
    """

    def __init__(self, text="", *, code="", keys=()):
        super().__init__(text)
        self.code, self.keys = code, tuple(keys)

    def reworded(self, text):
        """The same refusal, with its code and keys (texts, without unit), in another sentence."""
        return InputError(text, code=self.code, keys=self.keys)
