"""The context in which a run reads: it knows the layers of the run's inputs, and nothing of the project.

Whoever looks for a layer by its id, name or path in a context with a project makes the host throw away what that
project keeps ready for expressions. In a run's thread this happens while the window may be at it, as whenever it draws
its map: there is nothing where something was, and the host ends. Source: QgsProject::layerStore and
createExpressionContextScope, and seen on 3.40.
"""

from qgis.core import QgsProcessingContext


class ReadingContext(QgsProcessingContext):
    """A context with the settings of ``context``, in the caller's thread. ``layers``: {text that names it: map layer};
    they must stay meanwhile. What other texts name is opened anew."""

    def __init__(self, context, layers):
        super().__init__()
        self.copyThreadSafeSettings(context)
        self.setProject(None)
        self.layers = layers

    def getMapLayer(self, text):  # noqa: N802 - the host's name
        layer = self.layers.get(text)
        return layer if layer is not None else super().getMapLayer(text)


def layers_by_source(context, layers):
    """{source: map layer} of ``layers`` and of the context's project; in the host's main thread only."""
    project = context.project()
    there = [*layers, *(project.mapLayers().values() if project is not None else ())]
    return {layer.source(): layer for layer in there}
