"""Toolbox entries from the window: run, noted in the host's history, or opened as a form."""

from dataclasses import dataclass, field

from qgis.core import (
    QgsApplication,
    QgsDataSourceUri,
    QgsProcessingAlgRunnerTask,
    QgsProcessingContext,
    QgsProcessingException,
    QgsProcessingFeedback,
    QgsProject,
    QgsTask,
)
from qgis.gui import QgsGui
from qgis.PyQt.QtCore import QTimer

from ..algorithms.entry.collector import no_collection
from ..algorithms.entry.messages import REFUSAL, Message, listen
from ..algorithms.entry.trial_runs import mark_as_trial
from ..algorithms.language.translation import tr


@dataclass(frozen=True)
class Run:
    """A run that went well: the algorithm, what it was given, what came out and what was told meanwhile."""

    algorithm: object
    parameters: dict
    results: dict
    context: QgsProcessingContext
    feedback: QgsProcessingFeedback


class Refused(QgsProcessingException):
    """A run that cannot begin; ``refusal``: the Message that says why."""

    def __init__(self, refusal):
        super().__init__(refusal.text)
        self.refusal = refusal


class ToldFeedback(QgsProcessingFeedback):
    """Feedback that keeps the ``messages`` of our entries, with their codes, and the ``errors`` that the host reports;
    filled in the run's thread, read after it. The host's own remarks are none of our messages.
    """

    def __init__(self):
        super().__init__(False)
        self.messages, self.errors = listen(self), []

    def of_kind(self, kind):
        """The messages of one kind, in their order."""
        return [message for message in self.messages if message.kind == kind]

    def reportError(self, error, fatalError=False):  # noqa: N802, N803 - the host's names
        self.errors.append(error)
        super().reportError(error, fatalError)


def has(entry):
    """True where the toolbox has the entry with the id ``entry``."""
    return QgsApplication.processingRegistry().algorithmById(entry) is not None


def entry(name):
    """The algorithm of the toolbox entry with the id ``name``; None where there is none."""
    return QgsApplication.processingRegistry().algorithmById(name)


def _prepared(entry, parameters, feedback):
    """The algorithm and a context for a run. Raises Refused where the parameters do not fit."""
    algorithm = QgsApplication.processingRegistry().createAlgorithmById(entry)
    if algorithm is None:
        raise Refused(Message(REFUSAL, "", tr("The toolbox has no entry {}.").format(entry)))
    context = QgsProcessingContext()
    context.setProject(QgsProject.instance())
    context.setFeedback(feedback)
    heard = listen(feedback)
    valid, message = algorithm.checkParameterValues(parameters, context)
    if not valid:
        refusals = [one for one in heard if one.kind == REFUSAL]
        raise Refused(refusals[-1] if refusals else Message(REFUSAL, "", message))
    return algorithm, context


def run(entry, parameters):
    """Run the toolbox entry with the id ``entry`` as its form would; return the Run. Raises QgsProcessingException."""
    feedback = QgsProcessingFeedback(False)
    algorithm, context = _prepared(entry, parameters, feedback)
    results, _done = algorithm.run(parameters, context, feedback, {}, False)
    return Run(algorithm, parameters, results, context, feedback)


@dataclass
class Started:
    """Something that goes on in a task of the host's while the window lives; keep it until it has ended."""

    task: QgsTask
    ended: object
    feedback: object = None
    kept: list = field(default_factory=list)

    def cancel(self):
        """Ask it to stop; ``ended`` is still called, unless it was forgotten."""
        if self.feedback is not None:
            self.feedback.cancel()

    def forget(self):
        """Stop it, and let nobody hear of its end."""
        self.ended = None
        self.cancel()

    def _end(self, *outcome):
        ended, self.ended = self.ended, None
        if ended is not None:
            ended(*outcome)


def start(entry, parameters, ended, *, trial=False):
    """Run the toolbox entry ``entry`` in a task of the host's, as its form does; return the Started. ``trial``: its
    outputs are only looked at.

    ``ended(done, refusal)`` is called in the main thread, with the Run and None, or with None and the Message that says
    why where it failed or was cancelled. Raises Refused where the parameters do not fit; then nothing is called.
    """
    feedback = ToldFeedback()
    if trial:
        mark_as_trial(feedback)
    algorithm, context = _prepared(entry, parameters, feedback)
    task = QgsProcessingAlgRunnerTask(algorithm, parameters, context, feedback)
    started = Started(task, ended, feedback, [algorithm, context])

    def executed(successful, results):
        if successful and not feedback.isCanceled():
            started._end(Run(algorithm, parameters, results, context, feedback), None)
        elif feedback.isCanceled():
            started._end(None, Message(REFUSAL, "", tr("Cancelled; no output was written.")))
        else:
            started._end(None, _refusal(feedback))

    task.executed.connect(executed)
    return _begun(started)


def _begun(started):
    """Give the task to the host and return ``started``, which lives from now on until the host has deleted the task.

    As long as Python alone held them, all that a run works with was gone as soon as nobody here knew of it: of one that
    was forgotten, context and feedback were cleared away under the thread that was beginning it, which ended the host.
    A property belongs to the task itself, whatever becomes of this module.
    """
    started.task.setProperty("tautline_started", started)
    _WAITING.append(started)
    _add_next()
    return started


# What has not been given to the host yet, and milliseconds until it is tried again.
_WAITING, _PAUSE = [], 20


def _add_next():
    """Give the host the next task when none of ours is with it.

    Of a task that has ended it keeps the address of what ran it until the window hears of the end, and takes what
    stands at that address out of its queue. Where another task was added meanwhile that may be this one, which then
    never begins. Seen where many were added while the ends of as many others were on their way: 6 of 300 lost on 3.22,
    2 of 240 on 3.40.
    """
    while _WAITING and not any(map(_is_with_the_host, QgsApplication.taskManager().tasks())):
        started = _WAITING.pop(0)
        if started.ended is not None:
            QgsApplication.taskManager().addTask(started.task)
        else:
            # Forgotten before it began: nothing holds it any more.
            started.task.setProperty("tautline_started", None)
    if _WAITING:
        QTimer.singleShot(_PAUSE, _add_next)


def _is_with_the_host(task):
    """Whether a task is ours and the window has not heard of its end: the host's active tasks are those whose thread
    has not ended."""
    ended = (QgsTask.TaskStatus.Complete, QgsTask.TaskStatus.Terminated)
    return _is_ours(task) and task.status() not in ended


def _is_ours(task):
    return task.property("tautline_started") is not None


def _refusal(feedback):
    """Why the run failed: what our entry says, else the host's last error in one line."""
    said = feedback.of_kind(REFUSAL)
    if said:
        return said[-1]
    text = feedback.errors[-1] if feedback.errors else tr("The run failed without saying why.")
    return Message(REFUSAL, "", " ".join(text.split()))


def runs_going():
    """Whether a run of the toolbox, or something of ours beside the window, goes on in a task, which may be opening
    layers. Where the window opens another table of the same GeoPackage meanwhile, the oldest host's two locks, of all
    connections and of the one file, can be taken in opposite order, and both wait for ever."""
    going = QgsApplication.taskManager().activeTasks()
    return bool(_WAITING) or any(isinstance(task, QgsProcessingAlgRunnerTask) or _is_ours(task) for task in going)


class _Aside(QgsTask):
    """Calls a function in a thread of the host's; an error in what follows it is shown, not swallowed."""

    def __init__(self, title, function, ended):
        super().__init__(title)
        self.function, self.ended = function, ended
        self.value = self.error = None

    def run(self):
        try:
            with no_collection():
                self.value = self.function()
        except Exception as error:  # Whatever it is, it is told in the main thread.
            self.error = error
        return self.error is None

    def finished(self, successful):
        # No circle is left behind: what clears those away may do so in another run's thread, and layers of the window
        # that go there end the host.
        ended, self.ended, self.function = self.ended, None, None
        ended(self.value, self.error)


def aside(title, function, ended):
    """Call ``function()`` in a task of the host's; return the Started. ``ended(value, error)`` as for ``start``.

    ``error``: the exception that ended it, None where it went well.
    """
    task = _Aside(title, function, lambda value, error: started._end(value, error))
    started = Started(task, ended)
    return _begun(started)


def geopackage_table(path, table, geometry="geom"):
    """The destination that writes ``table`` into the GeoPackage ``path`` and leaves its other tables alone."""
    uri = QgsDataSourceUri()
    uri.setDatabase(str(path))
    uri.setDataSource("", table, geometry)
    return f"ogr:{uri.uri()}"


def note(done):
    """Put a Run into the host's history, where those from forms stand: a log or, on newer hosts, a database."""
    command = done.algorithm.asPythonCommand(done.parameters, done.context)
    if not hasattr(QgsGui, "historyProviderRegistry"):
        from processing.core.ProcessingLog import ProcessingLog

        ProcessingLog.addToLog(command)
        return
    entry = {
        "python_command": command,
        "algorithm_id": done.algorithm.id(),
        "results": done.results,
        "parameters": done.algorithm.asMap(done.parameters, done.context),
        "log": done.feedback.htmlLog(),
    }
    shell, complete = done.algorithm.asQgisProcessCommand(done.parameters, done.context)
    if complete:
        entry["process_command"] = shell
    QgsGui.historyProviderRegistry().addEntry("processing", entry)


def form(entry, parameters=None):
    """Return the form of the toolbox entry with the id ``entry``, filled with ``parameters``; the caller keeps it."""
    # Here, not above: on the command line there is no window, and the host's forms cannot be imported.
    from processing import createAlgorithmDialog

    return createAlgorithmDialog(entry, parameters or {})
