"""Which field of a layer is meant: named by the user, or found by its usual names."""

from ..core.errors import InputError
from ..language.number_text import listed
from ..language.translation import tr


def named_field(source, given, key, defaults=()):
    """Index of the field ``given`` by the user, else of the first of ``defaults`` there is; -1 for none.

    Names match without case. InputError where a given field does not exist.
    """
    names = [field.name().lower() for field in source.fields()]
    if given:
        if given.lower() not in names:
            raise InputError(
                tr("Layer '{}' has no field '{}' ({}); it has {}.").format(
                    source.sourceName(), given, key, listed([f.name() for f in source.fields()], 12) or tr("none")
                ),
                keys=(key,),
            )
        return names.index(given.lower())
    return next((names.index(name) for name in defaults if name in names), -1)
