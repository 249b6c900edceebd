"""Edits made by hand in the placed stations are never undone without a question."""

from qgis.PyQt.QtCore import Qt
from qgis.PyQt.QtWidgets import QMessageBox

from ...algorithms.language.translation import tr
from ..review.comparing import edited_by_hand

KEEP, ANEW, CANCEL = "keep", "anew", "cancel"


def answer(place, table, parent):
    """What is to become of the ``table`` in the GeoPackage ``place`` that a run would write anew: ANEW without a
    question where nobody has edited it. Opens the table: not while ``toolbox.runs_going``."""
    if not place or not edited_by_hand(f"{place}|layername={table}"):
        return ANEW
    box = QMessageBox(QMessageBox.Icon.Question, tr("Guided run"), "", QMessageBox.StandardButton.Cancel, parent)
    box.setTextFormat(Qt.TextFormat.PlainText)
    box.setText(tr("The placed stations were edited by hand since they were placed."))
    box.setInformativeText(
        tr(
            "Placing the list again would undo these edits in {}, table '{}'. Kept, the run takes them as they are."
        ).format(place, table)
    )
    keep = box.addButton(tr("Keep my edits"), QMessageBox.ButtonRole.AcceptRole)
    anew = box.addButton(tr("Place again"), QMessageBox.ButtonRole.DestructiveRole)
    box.setDefaultButton(keep)
    box.exec()
    return {keep: KEEP, anew: ANEW}.get(box.clickedButton(), CANCEL)
