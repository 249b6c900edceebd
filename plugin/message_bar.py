"""Sentences in the host's message bar. It shows markup, and a sentence may name a layer, a field or a path of any
name: what looks like markup in it is shown as it is written."""

from html import escape


def shown(text):
    """A sentence as the message bar shows it letter by letter."""
    return escape(text, quote=False)


def tell(bar, text, level, seconds=0):
    """Show a sentence of the plugin in the bar for some seconds, 0 until it is closed."""
    bar.pushMessage("Tautline", shown(text), level, seconds)
