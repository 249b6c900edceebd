"""Refusals and other sentences of the core in the user's language."""

from ..core.errors import Chainage, Length, Word
from .number_text import plain_text
from .translation import decimal_sign, tr, translatable

# Words that the core puts into refusals and does not write out there.
WORDS = (
    # Designs, and what a line is judged by.
    translatable("chord"),
    translatable("tangent"),
    translatable("inclined"),
    translatable("reference"),
    translatable("grade"),
    translatable("fitted"),
    # Numbers of a design.
    translatable("chainage a"),
    translatable("height a"),
    translatable("chainage b"),
    translatable("height b"),
    translatable("slope"),
    translatable("refraction"),
    translatable("radius"),
    # What a sight or its standard deviation is of.
    translatable("angle"),
    translatable("distance"),
    translatable("distance ratio"),
    translatable("height"),
    translatable("reading"),
    translatable("k"),
    translatable("collimation"),
    translatable("correction"),
    translatable("pressure"),
    translatable("temperature"),
)


class _Told(float):
    """A number that is told with the decimal sign of the language."""

    def __format__(self, spec):
        return super().__format__(spec).replace(".", decimal_sign())


def worded(sentence, station=None, units=None):
    """A Sentence of the core or an InputError in the user's language; an InputError from elsewhere is worded already
    and stays as it is.

    ``station``: how the run writes a chainage in metres, e.g. Notation.shown; ``units``: the run's Units, in whose
    chainages it tells lengths. Where nobody knows them these are metres.
    """
    # What was given may stand in a sentence from elsewhere: the host's translation would cut it at a zero byte.
    text = tr(sentence.text) if sentence.text.isprintable() else sentence.text
    # A sentence without values may hold braces of the user's own.
    return text.format(*(_told(value, station, units) for value in sentence.values)) if sentence.values else text


def _told(value, station, units):
    if isinstance(value, Word):
        return tr(str(value))
    if isinstance(value, Chainage) and station is not None:
        return station(float(value))
    if isinstance(value, Length):
        per, label = (1.0, "m") if units is None else (units.chainage, units.chainage_label)
        return f"{plain_text(round(value / per, 3), 12)} {label}"
    return _Told(value) if isinstance(value, float) else value
