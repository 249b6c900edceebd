"""What the panel is made of: a question, an answer with its label and problem, and sentences with a sign."""

from qgis.core import QgsApplication
from qgis.PyQt.QtCore import Qt
from qgis.PyQt.QtWidgets import QApplication, QFrame, QHBoxLayout, QLabel, QSizePolicy, QStyle, QVBoxLayout, QWidget

from ...algorithms.language.translation import tr

_SIGNS = {"fact": "/mIconSuccess.svg", "doubt": "/mIconWarning.svg", "wait": "/mIconInfo.svg", "todo": "/mIconInfo.svg"}


def _in_words(kind):
    """What a sign says, for those who do not see it."""
    return {"fact": tr("In order"), "doubt": tr("Doubtful"), "problem": tr("Problem"), "todo": tr("To do")}.get(
        kind, tr("Note")
    )


def wrapped(text="", parent=None):
    """A label that breaks its lines, and never makes the panel wider."""
    label = QLabel(text, parent)
    label.setWordWrap(True)
    label.setTextFormat(Qt.TextFormat.PlainText)
    policy = QSizePolicy(QSizePolicy.Policy.Ignored, QSizePolicy.Policy.Minimum)
    policy.setHeightForWidth(True)
    label.setSizePolicy(policy)
    return label


def sign_icon(kind):
    """The sign of a kind of sentence."""
    if kind in _SIGNS:
        return QgsApplication.getThemeIcon(_SIGNS[kind])
    # The host's own sign for what is critical is white on light.
    return QApplication.style().standardIcon(QStyle.StandardPixmap.SP_MessageBoxCritical)


def heading_label(text):
    """The heading of a part of the panel."""
    heading = QLabel(text)
    font = heading.font()
    font.setBold(True)
    font.setPointSizeF(font.pointSizeF() * 1.15)
    heading.setFont(font)
    return heading


class Sentence(QWidget):
    """A sentence with a sign before it: 'fact', 'doubt', 'problem', 'todo' or 'wait'."""

    def __init__(self, kind, text, parent=None):
        super().__init__(parent)
        self.kind = kind
        row = QHBoxLayout(self)
        row.setContentsMargins(0, 0, 0, 0)
        row.setSpacing(6)
        self._sign = QLabel()
        self.label = wrapped(text)
        self.label.setTextInteractionFlags(Qt.TextInteractionFlag.TextSelectableByMouse)
        size = self.fontMetrics().height()
        self._sign.setPixmap(sign_icon(kind).pixmap(size, size))
        self._sign.setAccessibleName(_in_words(kind))
        self._sign.setToolTip(_in_words(kind))
        row.addWidget(self._sign, 0, Qt.AlignmentFlag.AlignTop)
        row.addWidget(self.label, 1)

    def text(self):
        return self.label.text()


class Sentences(QWidget):
    """Sentences one below the other."""

    def __init__(self, parent=None):
        super().__init__(parent)
        self._column = QVBoxLayout(self)
        self._column.setContentsMargins(0, 2, 0, 2)
        self._column.setSpacing(3)
        self._told = []
        self.setVisible(False)

    def tell(self, told):
        """Show ``told``, a list of (kind, sentence), in place of what stood there."""
        if told == self._told:
            return
        self._told = list(told)
        while self._column.count():
            old = self._column.takeAt(0).widget()
            # Hidden at once: deleted later, it would shine through what takes its place.
            old.hide()
            old.deleteLater()
        for kind, text in told:
            self._column.addWidget(Sentence(kind, text, self))
        self.setVisible(bool(told))

    def told(self):
        return list(self._told)


class Answer(QWidget):
    """A field with its label above it and, where there is one, the problem with it below."""

    def __init__(self, text, field, hint="", parent=None):
        super().__init__(parent)
        self.field = field
        column = QVBoxLayout(self)
        column.setContentsMargins(0, 0, 0, 0)
        column.setSpacing(2)
        self.label = QLabel(text)
        self.label.setBuddy(field)
        self.problem = Sentences()
        field.setToolTip(hint)
        field.setAccessibleName(text.replace("&", ""))
        field.setMinimumWidth(60)
        field.setSizePolicy(QSizePolicy.Policy.Expanding, field.sizePolicy().verticalPolicy())
        column.addWidget(self.label)
        column.addWidget(field)
        column.addWidget(self.problem)
        column.addStretch()

    def say(self, sentence):
        """Show one sentence below the field, '' for none."""
        self.problem.tell([("problem", sentence)] if sentence else [])


class Question(QWidget):
    """One of the panel's questions: number, title, the question as a sentence, its answers and what was understood."""

    def __init__(self, number, title, question, parent=None, notes_first=False):
        super().__init__(parent)
        column = QVBoxLayout(self)
        column.setContentsMargins(0, 0, 0, 0)
        column.setSpacing(6)
        if number > 1:
            line = QFrame()
            line.setFrameShape(QFrame.Shape.HLine)
            line.setFrameShadow(QFrame.Shadow.Sunken)
            column.addWidget(line)
        column.addWidget(heading_label(f"{number}  {title}"))
        column.addWidget(wrapped(question))
        self.body, self.notes = QVBoxLayout(), Sentences()
        self.body.setSpacing(6)
        if notes_first:
            column.addWidget(self.notes)
        column.addLayout(self.body)
        if not notes_first:
            column.addWidget(self.notes)
