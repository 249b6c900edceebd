"""What a person is asked in a review: where decisions are to be kept, and whether edits may be saved."""

from pathlib import Path

from qgis.PyQt.QtCore import Qt
from qgis.PyQt.QtWidgets import QFileDialog, QMessageBox

from ...algorithms.language.decision_words import ENDING
from ...algorithms.language.translation import tr


def ask_place(parent, reason, name):
    """Tell why the place of the decisions cannot be used and ask for another; its path, '' where the user gave up.

    ``name``: of the layer, for the file that is proposed. A file that is there is not replaced, but written on.
    """
    box = QMessageBox(QMessageBox.Icon.Question, tr("Decisions"), reason, QMessageBox.StandardButton.Cancel, parent)
    box.setInformativeText(tr("Where should the decisions on these stations be kept?"))
    choose = box.addButton(tr("Choose a place…"), QMessageBox.ButtonRole.AcceptRole)
    box.setDefaultButton(choose)
    box.exec()
    if box.clickedButton() is not choose:
        return ""
    proposed = str(Path.home() / (name.replace("/", "-") + ENDING))
    path, _kind = QFileDialog.getSaveFileName(
        parent,
        tr("Place for the decisions"),
        proposed,
        tr("GeoPackage (*.gpkg)"),
        "",
        QFileDialog.Option.DontConfirmOverwrite,
    )
    return path if not path or path.lower().endswith(".gpkg") else path + ".gpkg"


def may_run(parent, question, title=""):
    """Show what a run will do and ask whether it may; without a question it may."""
    if not question:
        return True
    title = title or tr("Run again")
    box = QMessageBox(QMessageBox.Icon.Question, title, "", QMessageBox.StandardButton.Cancel, parent)
    box.setTextFormat(Qt.TextFormat.PlainText)
    box.setText(question)
    go = box.addButton(title, QMessageBox.ButtonRole.AcceptRole)
    box.setDefaultButton(go)
    box.exec()
    return box.clickedButton() is go


def may_save(parent, layers):
    """Ask whether the edits of layers may be saved, so that a run can use them."""
    text = tr("The edits of '{}' are not saved.").format(", ".join(layer.name() for layer in layers))
    box = QMessageBox(
        QMessageBox.Icon.Question,
        tr("Run again"),
        text,
        QMessageBox.StandardButton.Save | QMessageBox.StandardButton.Cancel,
        parent,
    )
    box.setInformativeText(tr("They must be saved before the run can use them."))
    return box.exec() == QMessageBox.StandardButton.Save
