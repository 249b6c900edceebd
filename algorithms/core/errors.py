"""The one error of the core."""


class InputError(ValueError):
    """What was given cannot be computed; the message is one sentence for the user.

    The host side turns it into its own processing error in ``algorithms/base.py`` and nowhere else.
    """
