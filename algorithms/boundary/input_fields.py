"""Which field of a layer is meant: named by the user, or found by its usual names."""

from ..core.errors import InputError
from ..core.headings import columns_of
from ..language.number_text import listed
from ..language.translation import tr


def field_indices(source):
    """{name in small letters: index} of the fields of a source; of names that differ by case alone, the one written
    in small letters, as our own are, else the first."""
    found = {}
    for index, field in enumerate(source.fields()):
        found.setdefault(field.name().lower(), index)
    return {**found, **{field.name(): k for k, field in enumerate(source.fields()) if field.name() in found}}


def named_field(source, given, key, defaults=()):
    """Index of the field ``given`` by the user, else of the first of ``defaults`` there is; -1 for none.

    The very name counts first; one that differs by case alone only where it is the only one. InputError where a given
    field does not exist, or where it cannot be told which one is meant.
    """
    names = [field.name() for field in source.fields()]
    for name in (given,) if given else defaults:
        alike = [k for k, one in enumerate(names) if one.lower() == name.lower()]
        if name in names:
            return names.index(name)
        if len(alike) > 1:
            raise InputError(
                tr("Layer '{}' has the fields {}, which differ by case only; name the one that is meant ({}).").format(
                    source.sourceName(), listed([names[k] for k in alike]), key
                ),
                keys=(key,),
            )
        if alike:
            return alike[0]
    if given:
        raise InputError(
            tr("Layer '{}' has no field '{}' ({}); it has {}.").format(
                source.sourceName(), given, key, listed(names, 12) or tr("none")
            ),
            keys=(key,),
        )
    return -1


def headings_of(source, index):
    """What a field is called, a tuple: its name and its alias, where it has one; () for the index -1."""
    if index < 0:
        return ()
    field = source.fields()[index]
    return tuple(text for text in (field.name(), field.alias()) if text)


def field_of_kind(source, given, key, kind, first=(), ambiguous_refused=True):
    """Index of the field ``given`` by the user, else of one called as in ``first``, else of one that core.headings
    knows for ``kind``; -1 for none. InputError as ``named_field``, and where several fields have the same heading:
    without ``ambiguous_refused`` these are none."""
    index = named_field(source, given, key, first)
    if index >= 0:
        return index
    fields = range(source.fields().count())
    found = columns_of([headings_of(source, k) for k in fields], kind)
    if len(found) > 1 and ambiguous_refused:
        raise InputError(
            tr("Layer '{}' has the fields {}, and each may be the {}; name the one that is meant ({}).").format(
                source.sourceName(), listed([f"'{source.fields()[k].name()}'" for k in found]), tr(kind), key
            ),
            keys=(key,),
        )
    return found[0] if len(found) == 1 else -1
