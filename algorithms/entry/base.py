"""What all toolbox entries share: identity, parameters, and the host's calls for checks and run.

The host makes all entries when it starts: ``parameter_checks`` and ``run_sequence`` are imported when it first calls.
"""

from dataclasses import dataclass, field

from qgis.core import QgsProcessingAlgorithm, QgsProcessingOutputNumber
from qgis.PyQt.QtCore import QCoreApplication

# Here, in the main thread: pyproj must not be imported first in a thread that Qt made (core/python_thread.py).
from ..core import geodesy  # noqa: F401
from ..language.translation import speak_by, tr
from .collector import no_collection

speak_by(QCoreApplication.translate)

_OWN = {"ID", "TITLE", "GROUP", "GROUP_ID", "HELP", "TAGS"}


@dataclass
class Result:
    """What an entry has computed: tables and documents to write, and numbers for the results."""

    tables: list
    numbers: dict = field(default_factory=dict)
    documents: list = field(default_factory=list)


class ToolboxEntry(QgsProcessingAlgorithm):
    """One entry of the toolbox. A subclass states ID, TITLE, GROUP, GROUP_ID, HELP and TAGS and defines

    - ``entry_parameters()``: list of fresh parameters;
    - ``result_numbers()``: {name: label} of number outputs;
    - ``computing()``: the class of its run, imported there. Called with the Request it gives what reads, checks and
      computes, whose ``result()`` is a Result; it opens no sink;
    - ``prepared(asked)``, where it needs one: reads before the run, in the main thread, what only that may touch.

    Anything else in capitals is refused when the class is made, so that a misspelt name is not silently dead.
    """

    ID = TITLE = GROUP = GROUP_ID = HELP = ""
    TAGS = ()

    def __init_subclass__(cls, **kwargs):
        super().__init_subclass__(**kwargs)
        unknown = {name for name in vars(cls) if name.isupper()} - _OWN
        if unknown:
            raise TypeError(f"{cls.__name__} states {sorted(unknown)}, which no entry has")

    def name(self):
        return self.ID

    def displayName(self):  # noqa: N802 - the host's name
        return self.tr(self.TITLE)

    def group(self):
        return self.tr(self.GROUP)

    def groupId(self):  # noqa: N802 - the host's name
        return self.GROUP_ID

    def shortHelpString(self):  # noqa: N802 - the host's name
        return self.tr(self.HELP)

    def shortDescription(self):  # noqa: N802 - the host's name
        return self.tr(self.TITLE)

    def tags(self):
        return [self.tr(tag) for tag in self.TAGS]

    def tr(self, text):
        return tr(text)

    def createInstance(self):  # noqa: N802 - the host's name
        return type(self)()

    def entry_parameters(self):
        raise NotImplementedError

    def result_numbers(self):
        return {}

    def computing(self):
        raise NotImplementedError

    def prepared(self, asked):
        """Before the run, in the main thread; InputError where the run is refused."""

    def initAlgorithm(self, configuration=None):  # noqa: N802 - the host's name
        for parameter in self.entry_parameters():
            self.addParameter(parameter)
        for name, label in self.result_numbers().items():
            self.addOutput(QgsProcessingOutputNumber(name, label))

    def checkParameterValues(self, parameters, context):  # noqa: N802 - the host's name
        from .parameter_checks import checked

        return checked(self, parameters, context, super().checkParameterValues)

    def prepareAlgorithm(self, parameters, context, feedback):  # noqa: N802 - the host's name
        from .run_sequence import prepare

        self._run = prepare(self, parameters, context, feedback)
        return True

    def processAlgorithm(self, parameters, context, feedback):  # noqa: N802 - the host's name
        with no_collection():
            return self._run(parameters, context, feedback)
