"""Tables of a GeoPackage put in each other's place, whole or not at all; its file made ready to be replaced."""

import os
import sqlite3
from contextlib import closing, contextmanager, suppress
from pathlib import Path

from osgeo import gdal, ogr

from ..language.translation import tr
from .output_places import SIDECARS

_STYLES = "layer_styles"
# Seconds to wait for another program that is writing.
_PATIENCE = 5.0


class NotReplaced(RuntimeError):
    """What stood at a place could not be replaced, and still stands there; the text says why."""


def has_table(path, name):
    """Whether a GeoPackage has a table; False where the file cannot be opened. Case does not count, as in SQLite."""
    data = _opened(path)
    return data is not None and _index(data, name) is not None


def rows_and_index(path, name):
    """(number of rows, False for one with geometry and no spatial index) of a table, '' for the first; (0, True) where
    it cannot be opened."""
    data = _opened(path)
    at = None if data is None else _index(data, name) if name else 0
    layer = None if at is None else data.GetLayer(at)
    if layer is None:
        return 0, True
    indexed = layer.GetGeomType() == ogr.wkbNone or layer.TestCapability(ogr.OLCFastSpatialFilter)
    return max(layer.GetFeatureCount(), 0), bool(indexed)


def put_in_place(path, tables):
    """Give tables their names, in one transaction: what had the name before is dropped, with its styles.

    ``path``: of the GeoPackage; ``tables``: [(name as written, name)]. Raises NotReplaced, with everything as before.
    """
    data = _opened_to_write(path)
    with _refusing(path):
        if data.StartTransaction() != 0:
            raise NotReplaced(_in_use(path))
        try:
            for written, name in tables:
                _drop(data, name)
                _rename(data, written, name)
            if data.CommitTransaction() != 0:
                raise NotReplaced(_in_use(path))
        except BaseException:
            # What is not committed is given up with the data set, where taking it back fails too.
            with suppress(RuntimeError):
                data.RollbackTransaction()
            raise
        finally:
            # The file is closed only when nothing refers to the data set any more.
            del data


def drop_table(path, name):
    """Remove a table and its styles. Raises NotReplaced where it cannot be removed; none of that name is well."""
    data = _opened_to_write(path)
    with _refusing(path):
        _drop(data, name)
        if _index(data, name) is not None:
            raise NotReplaced(_in_use(path))


def check_writable(path):
    """Raise NotReplaced where no table can be added to a file that stands: locked, read-only, or no GeoPackage."""
    if not os.access(path, os.W_OK):
        raise NotReplaced(tr("{} is read-only").format(path))
    try:
        with closing(sqlite3.connect(f"{Path(path).as_uri()}?mode=rw", uri=True, timeout=_PATIENCE)) as connection:
            connection.isolation_level = None
            connection.execute("BEGIN IMMEDIATE")
            sound = connection.execute("PRAGMA quick_check(1)").fetchone() == ("ok",)
            named = connection.execute("SELECT count(*) FROM sqlite_master WHERE name = 'gpkg_contents'").fetchone()[0]
            connection.execute("ROLLBACK")
    except sqlite3.OperationalError:
        raise NotReplaced(_in_use(path)) from None
    except sqlite3.DatabaseError:
        sound = named = False
    if not sound or not named:
        raise NotReplaced(tr("{} is not a GeoPackage, or is damaged").format(path))


def settle(path):
    """Bring what a GeoPackage keeps beside itself into its file, so that this alone is whole and can be replaced.

    Without it a kill between replacing the file and removing what lies beside it would mix the old with the new.
    Raises NotReplaced where another program holds it open; a file that is no database has nothing to settle.
    """
    if not any(os.path.exists(path + tail) for tail in SIDECARS):
        return
    try:
        with closing(sqlite3.connect(f"{Path(path).as_uri()}?mode=rw", uri=True, timeout=_PATIENCE)) as connection:
            # The first read rolls back what a killed program left half written.
            connection.execute("SELECT count(*) FROM sqlite_master").fetchone()
            busy, logged, copied = connection.execute("PRAGMA wal_checkpoint(TRUNCATE)").fetchone()
    except sqlite3.OperationalError:
        raise NotReplaced(_in_use(path)) from None
    except sqlite3.DatabaseError:
        return
    if busy and logged != copied:
        raise NotReplaced(_in_use(path))


def _opened(path, how=gdal.OF_READONLY):
    """A file opened to be read, None where that cannot be; GDAL raises where another plugin has asked it to."""
    try:
        with _quiet():
            return gdal.OpenEx(path, gdal.OF_VECTOR | how)
    except RuntimeError:
        return None


def _opened_to_write(path):
    data = _opened(path, gdal.OF_UPDATE)
    if data is None:
        raise NotReplaced(_in_use(path))
    return data


@contextmanager
def _refusing(path):
    """What fails in a file that is open is told as NotReplaced, whether GDAL says so by a number or, where another
    plugin has asked it to, by raising."""
    try:
        with _quiet():
            yield
    except NotReplaced:
        raise
    except RuntimeError:
        raise NotReplaced(_in_use(path)) from None


def _in_use(path):
    return tr("{} is in use by another program").format(path)


def _index(data, name):
    for k in range(data.GetLayerCount()):
        if data.GetLayer(k).GetName().lower() == name.lower():
            return k
    return None


def _drop(data, name):
    at = _index(data, name)
    if at is not None:
        table = data.GetLayer(at).GetName()
        if data.DeleteLayer(at) != 0:
            raise NotReplaced(tr("the table '{}' cannot be removed").format(table))
    for style in _styles_of(data, name):
        _style_table(data).DeleteFeature(style.GetFID())


def _rename(data, written, name):
    at = _index(data, written)
    if at is None:
        raise NotReplaced(tr("the table '{}' no longer exists").format(written))
    layer = data.GetLayer(at)
    if hasattr(layer, "Rename"):
        failed = layer.Rename(name) != 0
    else:
        quoted = [one.replace('"', '""') for one in (layer.GetName(), name)]
        data.ExecuteSQL('ALTER TABLE "{}" RENAME TO "{}"'.format(*quoted))
        failed = _index(data, name) is None
    if failed:
        raise NotReplaced(tr("the table '{}' cannot be given its name").format(name))
    for style in _styles_of(data, written):
        style.SetField("f_table_name", name)
        _style_table(data).SetFeature(style)


def _style_table(data):
    """The host's table of styles, None where no style was ever saved."""
    at = _index(data, _STYLES)
    return None if at is None else data.GetLayer(at)


def _styles_of(data, name):
    """Styles of a table, as the host keeps them; none where no style was ever saved."""
    styles = _style_table(data)
    if styles is None:
        return []
    styles.ResetReading()
    return [one for one in styles if (one.GetField("f_table_name") or "").lower() == name.lower()]


class _quiet:  # noqa: N801 - used as a statement
    """GDAL's own words for what fails go nowhere: the sentence that is raised says it."""

    def __enter__(self):
        gdal.PushErrorHandler("CPLQuietErrorHandler")

    def __exit__(self, *_):
        gdal.PopErrorHandler()
