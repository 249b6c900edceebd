"""Documents beside the output layers (HTML, CSV, pictures): written whole or not at all, after the layers."""

import os
from dataclasses import dataclass

from qgis.core import QgsProcessingException

from ..language.translation import tr


@dataclass(frozen=True)
class Document:
    """One file, ready to be written: ``key`` of its parameter, ``content`` as bytes."""

    key: str
    content: bytes


def write_documents(placed):
    """Write files: ``placed``, list of (Document, path). What stood there stays unless all of them could be written.

    Raises QgsProcessingException naming the parameter and the place.
    """
    staged, aside = [], []
    try:
        for document, path in placed:
            staged.append(_beside(path, "new"))
            with open(staged[-1], "wb") as file:
                file.write(document.content)
        for (document, path), new in zip(placed, staged):  # noqa: B007 - the refusal names it
            if os.path.exists(path):
                os.replace(path, _beside(path, "before"))
                aside.append((path, True))
            else:
                aside.append((path, False))
            os.replace(new, path)
    except OSError as error:
        for path, stood in aside:
            _remove(path)
            if stood:
                os.replace(_beside(path, "before"), path)
        for new in staged:
            _remove(new)
        raise QgsProcessingException(
            tr("The output {} cannot be written to {}: {}.").format(document.key, path, error.strerror or error)
        ) from None
    for path, stood in aside:
        if stood:
            _remove(_beside(path, "before"))


def _beside(path, ending):
    return os.path.join(os.path.dirname(path), f".{os.path.basename(path)}.{ending}")


def _remove(path):
    if os.path.exists(path):
        os.remove(path)
