"""What a report is made of that is older than its own input: named in the cautions, and never half believed."""

from dataclasses import replace

import numpy as np

from ..entry.stale_inputs import changed_inputs
from ..language.translation import tr

_KEYS = ("STATIONS", "TESTED", "REFERENCE", "CURVATURE")


def old_inputs(asked):
    """(cautions, sentence): a sentence for each layer that is older than its input; and why the flags of TESTED do not
    count, '' where they do.

    Residuals and tests that were made from different heights would say two things of one station.
    """
    changed = {key: changed_inputs(asked, key) for key in _KEYS}
    told = [
        tr("Layer '{}' ({}) is older than what it was made from: {}. What is said from it may no longer hold.").format(
            name, key, one.sentence
        )
        for key, many in changed.items()
        for name, one in many
    ]
    tested = _record(asked, "TESTED")
    if not asked.given("TESTED") or not tested or _made_alike(_record(asked, "STATIONS"), tested, changed):
        return told, ""
    return told, tr(
        "The stations with residuals and the tested stations (TESTED) were not made from the same heights: flags and "
        "w are left out of this report. Bring both up to date and write the report again."
    )


def _record(asked, key):
    return next(iter(asked.records.get(key, ())), None)


def _made_alike(stations, tested, changed):
    """Whether nothing tells that residuals and test were made from different states of one input."""
    hashes = [
        {(one.source, one.fields): one.hash for one in (record.inputs.get("STATIONS", ()) if record else ())}
        for record in (stations, tested)
    ]
    common = set(hashes[0]) & set(hashes[1])
    if any(hashes[0][key] != hashes[1][key] for key in common):
        return False
    if common:
        return True
    return bool(changed["STATIONS"]) == bool(changed["TESTED"])


def without_flags(reviewed):
    """The reviewed stations without what a test said of them."""
    unknown, nobody = np.full(len(reviewed), np.nan), np.zeros(len(reviewed), bool)
    return replace(reviewed, w=unknown, suspected=nobody, lat_w=unknown, lat_suspected=nobody, has_tested=False)
