"""Which layers are older than what they were made from, and in which order their recorded runs are run again."""

import os
from dataclasses import dataclass

from ..language.translation import tr
from .run_record import RunRecord


@dataclass(frozen=True)
class MadeLayer:
    """A layer that a recorded run has made: ``key`` of the caller's, ``name``, ``source`` as the host has it;
    ``changed``: names of its inputs that have changed since; ``edited``: whether its rows are not those written."""

    key: str
    name: str
    source: str
    record: RunRecord
    changed: tuple = ()
    edited: bool = False


@dataclass(frozen=True)
class ChainStep:
    """One recorded run with all ``layers`` (MadeLayers) that it has made; ``causes``: names of what they are older
    than, directly or because that will be made anew."""

    layers: tuple
    causes: tuple

    @property
    def edited(self):
        """The layers with edits made by hand, which a run would undo."""
        return tuple(layer for layer in self.layers if layer.edited)


def recorded_chain(made):
    """The runs to be run again, from the first whose input has changed to the last that rests on it: list of ChainStep,
    none before one that it needs. ``made``: MadeLayers."""
    runs = {}
    for layer in made:
        runs.setdefault(run_key(layer.record), []).append(layer)
    makers = _makers(runs)
    needs = {run: _needed(layers, makers) for run, layers in runs.items()}
    steps = {}
    for run in after_what_they_need(runs, needs):
        causes = [name for layer in runs[run] for name in layer.changed]
        causes += [name for other, name in needs[run] if other in steps and other != run]
        if causes:
            steps[run] = ChainStep(tuple(runs[run]), tuple(dict.fromkeys(causes)))
    return list(steps.values())


def run_key(record):
    """What the RunRecords of all layers of one recorded run have in common, and no other."""
    return record.entry, repr(sorted(record.parameters.items(), key=lambda item: item[0]))


def stale_line(steps):
    """One line that names what is older than what; '' where nothing is."""
    parts = {}
    for step in steps:
        parts.setdefault(step.causes, []).extend(layer.name for layer in step.layers)
    told = [
        tr("{} older than {}").format(_quoted(dict.fromkeys(layers)), _quoted(causes))
        for causes, layers in parts.items()
    ]
    return tr("Out of date: {}.").format("; ".join(told)) if told else ""


def short_stale_line(steps):
    """The same in a few words, for where there is room for one line; '' where nothing is out of date."""
    names = [layer.name for step in steps for layer in step.layers]
    if not names:
        return ""
    more = tr(" and {} more layers").format(len(names) - 1) if len(names) > 2 else ""
    shown = names[:1] if more else names
    return tr("Out of date: {}{}, older than {}.").format(_quoted(shown), more, _quoted(steps[0].causes))


def _quoted(names):
    return ", ".join(f"'{name}'" for name in names)


def place_key(source):
    """(file, table) that a source names, as one key; the source itself where it is no file."""
    path, _, rest = source.partition("|")
    if not os.path.isabs(path):
        return source, ""
    name = next((part[10:] for part in rest.split("|") if part.lower().startswith("layername=")), "")
    # A file without a table's name is opened at its only table, which mostly has the file's name.
    return os.path.realpath(path), (name or os.path.splitext(os.path.basename(path))[0]).lower()


def _makers(runs):
    """{place: (run, name of the layer)}."""
    return {place_key(layer.source): (run, layer.name) for run, layers in runs.items() for layer in layers}


def _needed(layers, makers):
    """[(run, name of its layer)] that the run of ``layers`` reads from."""
    sources = {one.source for layer in layers for readings in layer.record.inputs.values() for one in readings}
    return [makers[key] for key in map(place_key, sorted(sources)) if key in makers]


def after_what_they_need(runs, needs):
    """The runs, each after those that it needs; of a ring, which only a damaged record can tell, as they come."""
    done, order = set(), []
    for first in runs:
        waiting = [(first, False)]
        while waiting:
            run, ready = waiting.pop()
            if ready:
                order.append(run)
            elif run not in done:
                done.add(run)
                waiting.append((run, True))
                waiting += [(other, False) for other, _ in needs[run] if other not in done]
    return order
