"""Documents beside the output layers (HTML, CSV, pictures)."""

from dataclasses import dataclass

from ..core.errors import InputError
from ..language.translation import tr


@dataclass(frozen=True)
class Document:
    """One file, ready to be written: ``key`` of its parameter, ``content`` as bytes."""

    key: str
    content: bytes


def write_document(document, staged, path):
    """Write a Document at ``staged``; InputError naming its parameter and ``path``, where it will stand."""
    try:
        with open(staged, "wb") as file:
            file.write(document.content)
    except OSError as error:
        raise InputError(
            tr("The output {} cannot be written to {}: {}.").format(document.key, path, error.strerror or error),
            keys=(document.key,),
        ) from None
