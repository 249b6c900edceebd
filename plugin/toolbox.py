"""Toolbox entries from the window: run, noted in the host's history, or opened as a form."""

from dataclasses import dataclass

from qgis.core import QgsApplication, QgsProcessingContext, QgsProcessingException, QgsProcessingFeedback, QgsProject
from qgis.gui import QgsGui

from ..algorithms.texts import tr


@dataclass(frozen=True)
class Run:
    """A run that went well: the algorithm, what it was given, what came out and what was told meanwhile."""

    algorithm: object
    parameters: dict
    results: dict
    context: QgsProcessingContext
    feedback: QgsProcessingFeedback


def run(entry, parameters):
    """Run the toolbox entry with the id ``entry`` as its form would; return the Run. Raises QgsProcessingException."""
    algorithm = QgsApplication.processingRegistry().createAlgorithmById(entry)
    if algorithm is None:
        raise QgsProcessingException(tr("The toolbox has no entry {}.").format(entry))
    context, feedback = QgsProcessingContext(), QgsProcessingFeedback(False)
    context.setProject(QgsProject.instance())
    valid, message = algorithm.checkParameterValues(parameters, context)
    if not valid:
        raise QgsProcessingException(message)
    results, _done = algorithm.run(parameters, context, feedback, {}, False)
    return Run(algorithm, parameters, results, context, feedback)


def note(done):
    """Put a Run into the host's history, where those from forms stand: a log or, on newer hosts, a database."""
    command = done.algorithm.asPythonCommand(done.parameters, done.context)
    if not hasattr(QgsGui, "historyProviderRegistry"):
        from processing.core.ProcessingLog import ProcessingLog

        ProcessingLog.addToLog(command)
        return
    entry = {"python_command": command, "algorithm_id": done.algorithm.id(), "results": done.results,
             "parameters": done.algorithm.asMap(done.parameters, done.context), "log": done.feedback.htmlLog()}
    shell, complete = done.algorithm.asQgisProcessCommand(done.parameters, done.context)
    if complete:
        entry["process_command"] = shell
    QgsGui.historyProviderRegistry().addEntry("processing", entry)


def form(entry, parameters=None):
    """Return the form of the toolbox entry with the id ``entry``, filled with ``parameters``; the caller keeps it."""
    # Here, not above: on the command line there is no window, and the host's forms cannot be imported.
    from processing import createAlgorithmDialog

    return createAlgorithmDialog(entry, parameters or {})
