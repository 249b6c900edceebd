"""In which order recorded runs follow each other, told from their records alone."""

from ..boundary.output_places import place_of
from .recorded_chain import after_what_they_need, place_key, run_key


def in_order(records):
    """The RunRecords, each once, each after those whose outputs it has read; otherwise as they come."""
    runs = {}
    for record in records:
        if record.entry:
            runs.setdefault(run_key(record), record)
    made = {run: _outputs(record) for run, record in runs.items()}
    needs = {}
    for run, record in runs.items():
        read = [place_key(one.source) for readings in record.inputs.values() for one in readings]
        needs[run] = [(other, "") for other in runs if other != run and _made_in(made[other], read)]
    return [runs[run] for run in after_what_they_need(runs, needs)]


def _outputs(record):
    """Places, see ``place_of``, of what stands in the parameters beside the inputs: of the outputs, and of words that
    name no file."""
    texts = [value for key, value in record.parameters.items() if key not in record.inputs and isinstance(value, str)]
    return [place for place in map(place_of, texts) if place is not None]


def _made_in(outputs, read):
    """Whether one of the places ``read``, see ``place_key``, is among the outputs; a plain path makes all tables."""
    return any(path == file and (not name or name.lower() == table) for path, name in outputs for file, table in read)
