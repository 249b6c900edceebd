"""The coordinate reference system of a source, as the core takes it."""

from qgis.core import QgsCoordinateReferenceSystem

from ..core.errors import InputError
from ..language.translation import tr


def definition(crs):
    """A coordinate reference system as the core takes it: its EPSG code, else its WKT."""
    if crs.authid().startswith("EPSG:"):
        return crs.authid()
    return crs.toWkt(QgsCoordinateReferenceSystem.WktVariant.WKT_PREFERRED)


def checked_crs(source):
    """The CRS of a source; InputError where it has none."""
    crs = source.sourceCrs()
    if not crs.isValid():
        raise InputError(tr("Layer '{}' has no coordinate reference system; set it first.").format(source.sourceName()))
    return crs
