"""The user's wish to stop, asked for between chunks of work."""

CANCEL_EVERY = 20_000


class Cancelled(Exception):
    """The user has cancelled; nothing has been written, or what was is removed."""


def check_cancel(feedback):
    """Raise Cancelled where the user has asked for it; nobody is asked where ``feedback`` is None."""
    if feedback is not None and feedback.isCanceled():
        raise Cancelled()
