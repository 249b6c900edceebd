"""Tautline: was a long structure built to its design once the curvature of the Earth is allowed for?"""


def classFactory(iface):  # noqa: N802 - the host calls it by this name
    """Return the plugin object for the desktop or, with ``iface`` None, for the command line."""
    from .plugin.main import TautlinePlugin

    return TautlinePlugin(iface)
