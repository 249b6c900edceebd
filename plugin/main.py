"""Load and unload: the provider, and a menu."""

from qgis.core import QgsApplication

from .provider import TautlineProvider


class TautlinePlugin:
    """What the host loads; ``iface`` is None on the command line."""

    def __init__(self, iface):
        self.iface = iface
        self.provider = None

    def initProcessing(self):  # noqa: N802 - the host's name
        """Add the toolbox entries; all that the command line needs."""
        self.provider = TautlineProvider()
        QgsApplication.processingRegistry().addProvider(self.provider)

    def initGui(self):  # noqa: N802 - the host's name
        self.initProcessing()

    def unload(self):
        if self.provider is not None:
            QgsApplication.processingRegistry().removeProvider(self.provider)
            self.provider = None
