"""A box with the project's layers of a kind: it never chooses by itself, and knows which layers may stand in it."""

from qgis.core import QgsMapLayerProxyModel, QgsProject, QgsVectorLayer
from qgis.gui import QgsMapLayerComboBox

from ...algorithms.boundary.references import holds_references
from ...algorithms.styles.record_property import RECORD_PROPERTY

KINDS_OF_LAYERS = QgsMapLayerProxyModel.Filter


def is_result(layer):
    """Whether a run of ours has made the layer."""
    return bool(layer.customProperty(RECORD_PROPERTY, ""))


def is_reference(layer):
    """Whether the layer can hold references."""
    return isinstance(layer, QgsVectorLayer) and holds_references(layer.fields())


class LayerBox(QgsMapLayerComboBox):
    """The layers of the kinds ``filters`` for which ``accepts(layer)`` holds, and an empty line.

    ``update_layers`` and ``let_go`` are to be called when layers come and go: the host's own box moves on to a
    neighbour when the layer it shows is taken away.
    """

    def __init__(self, filters, accepts=None):
        super().__init__()
        self._accepts, self._excepted = accepts, set()
        self.setFilters(filters)
        self.setAllowEmptyLayer(True)
        self.setLayer(None)
        self.update_layers()

    def update_layers(self):
        """Leave out the layers that may not stand here."""
        if self._accepts is None:
            return
        others = [layer for layer in QgsProject.instance().mapLayers().values() if not self._accepts(layer)]
        ids = {layer.id() for layer in others}
        # The box keeps bare pointers: asked for them after a project was closed, it hands out layers that are gone.
        if ids != self._excepted:
            chosen = self.currentLayer()
            self.setExceptedLayerList(others)
            self._excepted = ids
            if self.currentLayer() is not chosen:
                self.setLayer(chosen if chosen is not None and chosen.id() not in ids else None)

    def let_go(self, ids):
        """Become empty where the layer chosen is one of those that go."""
        layer = self.currentLayer()
        if layer is not None and layer.id() in ids:
            self.setLayer(None)

    def layer_id(self):
        return self.currentLayer().id() if self.currentLayer() is not None else ""
