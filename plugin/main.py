"""Load and unload: the translation, the provider, and a menu."""

from pathlib import Path

from qgis.core import Qgis, QgsApplication, QgsProject
from qgis.PyQt.QtCore import QCoreApplication, QLocale, Qt, QTimer, QTranslator, QUrl
from qgis.PyQt.QtGui import QDesktopServices, QIcon
from qgis.PyQt.QtWidgets import QPushButton

from .. import algorithms
from ..algorithms import (
    boundary,
    comparison,
    core,
    design,
    deviations,
    documents,
    entry,
    language,
    levelling,
    report,
    schedule,
    structure,
    styles,
)
from ..algorithms.language.translation import speak_by, tr
from . import decisions, guided, profile, review
from .message_bar import shown
from .provider import ICON, TautlineProvider

try:
    from qgis.PyQt.QtGui import QAction
except ImportError:  # Qt 5
    from qgis.PyQt.QtWidgets import QAction

# Packages by name: the host forgets on unload only the modules that were imported so.
ROOMS = (algorithms, boundary, comparison, core, design, deviations, documents, entry, language, levelling, report)
ROOMS += (schedule, structure, styles, decisions, guided, profile, review)
MAIN_ENTRY = "tautline:designheights"
TRANSLATIONS = Path(__file__).parent / "i18n"
GUIDE = Path(__file__).parent / "guide"


def open_page(name):
    """Show a page of the guide, which needs no network, in the user's browser."""
    QDesktopServices.openUrl(QUrl.fromLocalFile(str(GUIDE / name)))


class TautlinePlugin:
    """What the host loads; ``iface`` is None on the command line."""

    def __init__(self, iface):
        self.iface = iface
        self.provider = None
        self.actions = []
        self.forms = []
        self.message = None
        self.guide = self.guided = None
        self.review = None
        self.translator = self._translate()

    @staticmethod
    def _translate():
        """Install the translation into the user's language; None where there is none."""
        speak_by(QCoreApplication.translate)
        # The language of the window, which its start can set beside the settings; else that of the settings.
        translator, locale = QTranslator(), QLocale(QgsApplication.instance().translation() or QgsApplication.locale())
        if not translator.load(locale, "tautline", "_", str(TRANSLATIONS)):
            return None
        QCoreApplication.installTranslator(translator)
        speak_by(QCoreApplication.translate, locale.bcp47Name(), locale.decimalPoint())
        return translator

    def initProcessing(self):  # noqa: N802 - the host's name
        """Add the toolbox entries; all that the command line needs."""
        if self.provider is None:
            self.provider = TautlineProvider()
            QgsApplication.processingRegistry().addProvider(self.provider)

    def initGui(self):  # noqa: N802 - the host's name
        """Add the toolbox entries and, where there is a window, the menu."""
        self.initProcessing()
        if self.iface is None:
            return
        self._add_action("tautline_open_example", tr("Open the example"), self.open_example)
        self._add_action("tautline_guided_run", tr("Guided run"), self.open_guided)
        self._add_action("tautline_design_heights", tr("Design heights and residuals…"), self.open_form)
        # Here: without a window there is nothing to review in.
        from .review.docks import Review

        self.review = Review(self.iface, self.open_form)
        self._add_action("tautline_profile_open", tr("Axis profile"), self.review.open_profile)
        self._add_action("tautline_flagged_open", tr("Flagged stations"), self.review.open_flagged)
        self._add_action("tautline_guide", tr("Guide"), lambda: open_page("index.html"))
        self._add_action("tautline_method", tr("How it is computed"), lambda: open_page("method.html"))
        for action in self.iface.pluginMenu().actions():
            if action.menu() is not None and self.actions[0] in action.menu().actions():
                action.menu().setIcon(QIcon(ICON))

    def _add_action(self, name, text, slot):
        action = QAction(text, self.iface.mainWindow())
        action.setObjectName(name)
        # Without arguments: the signal's own 'checked' is nobody's parameter.
        action.triggered.connect(lambda: slot())
        self.iface.addPluginToMenu("Tautline", action)
        self.actions.append(action)

    def unload(self):
        """Take back all that was added."""
        # The host destroys a form that is closed; one whose run is still going, when that has ended.
        for form in list(self.forms):
            form.close()
        self._close_message()
        self._close_guided()
        self._close_guide()
        if self.review is not None:
            self.review.close()
            self.review = None
        for action in self.actions:
            self.iface.removePluginMenu("Tautline", action)
            action.deleteLater()
        self.actions = []
        if self.provider is not None:
            QgsApplication.processingRegistry().removeProvider(self.provider)
            self.provider = None
        if self.translator is not None:
            QCoreApplication.removeTranslator(self.translator)
            self.translator = None

    # --- the menu

    def open_example(self):
        """Ask for a place and open the example there."""
        from . import example

        place = example.ask_place(self.iface.mainWindow())
        if not place:
            return
        try:
            found = example.open_example(self.iface, place)
        except example.ExampleFailed as error:
            self._say(str(error), Qgis.MessageLevel.Critical)
            return
        if found is not None:
            self._open_guide(found)
            self._show_profile(found["residuals"])
            # After the docks have taken their room from the map.
            axis = found["axis"].id()
            QTimer.singleShot(0, lambda: self._show_example_map(axis, found))
            parameters = example.run_again(found)
            self._say(example.story(), Qgis.MessageLevel.Info, lambda: self.open_form(parameters))

    def _show_example_map(self, axis, found):
        from . import example

        if QgsProject.instance().mapLayer(axis) is not None:
            example.show_map(self.iface, found)

    def _open_guide(self, found):
        """The example's text beside the map, until it is closed or another project comes."""
        from . import example
        from .example_guide import ExampleGuide

        self._close_guide()
        parameters = example.run_again(found)
        self.guide = ExampleGuide(self.iface.mainWindow(), "bars" in found)
        self.guide.form_wanted.connect(lambda: self.open_form(parameters))
        self.guide.guided_wanted.connect(self.open_guided)
        self._dock_right(self.guide)
        QgsProject.instance().cleared.connect(self._leave_example)

    def _close_guide(self):
        guide, self.guide = self.guide, None
        if guide is not None:
            QgsProject.instance().cleared.disconnect(self._leave_example)
            self.iface.removeDockWidget(guide)
            guide.deleteLater()

    def _leave_example(self):
        """Another project has come: what was said of the example goes."""
        self._close_guide()
        self._close_message()

    def _dock_right(self, dock):
        """Put a panel on the right, wide enough to be read, in front of one that is there already."""
        from .review.tabs import tabify

        window = self.iface.mainWindow()
        self.iface.addDockWidget(Qt.DockWidgetArea.RightDockWidgetArea, dock)
        tabify(window, dock)
        window.resizeDocks([dock], [32 * dock.fontMetrics().averageCharWidth() + 140], Qt.Orientation.Horizontal)

    def open_guided(self):
        """Open the panel of the guided run, or bring it to the front."""
        if self.guided is None:
            # Here: the panel's widgets exist with a window only.
            from . import follow_up_forms, slide
            from .guided.panel import GuidedPanel

            self.guided = GuidedPanel(self.iface)
            self.review.show_stale_line(self.guided)
            self.review.renewed = [self.guided.tell_renewed]
            self._dock_right(self.guided)
            self.guided.finished.connect(self._guided_finished)
            self.guided.profile_wanted.connect(self._show_profile)
            self.guided.offer_follow_up_forms(
                lambda layer: follow_up_forms.menu(
                    self.guided, layer, self.open_form, lambda stations: slide.ask(self.guided, stations)
                )
            )
        self.guided.setUserVisible(True)

    def _close_guided(self):
        if self.guided is not None:
            self.guided.leave()
            self.review.renewed = []
            self.iface.removeDockWidget(self.guided)
            self.guided.deleteLater()
            self.guided = None

    def _guided_finished(self, outcome):
        """The run's results in the profile, where there is one."""
        if self._show_profile(outcome.layers["residuals"]):
            self.guided.offer_profile()

    def _show_profile(self, layer):
        """Open the profile of ``layer``; return whether there is one."""
        review = getattr(self, "review", None)
        if review is None:
            return False
        self.iface.setActiveLayer(layer)
        return review.open_profile() is not None

    def open_form(self, parameters=None, entry=MAIN_ENTRY):
        """Open the form of a toolbox entry beside the map; layers that are no longer there are left out."""
        layers = QgsProject.instance().mapLayers()
        wanted = {
            key: value
            for key, value in (parameters or {}).items()
            if key not in ("STATIONS", "AXIS") or value in layers or entry != MAIN_ENTRY
        }
        from . import toolbox

        form = toolbox.form(entry, wanted)
        self.forms.append(form)
        form.destroyed.connect(lambda: self.forms.remove(form))
        form.show()

    def _say(self, text, level, open_form=None):
        """Show one sentence in the message bar until it is closed, with a button for the form where there is a slot."""
        self._close_message()
        bar = self.iface.messageBar()
        message = bar.createMessage("Tautline", shown(text))
        # Its method, not a function that holds the message: Python may clear such a circle before the window calls it.
        message.destroyed.connect(self._forget)
        if open_form is not None:
            button = QPushButton(tr("Open its form…"), message)
            button.clicked.connect(lambda: open_form())
            message.layout().addWidget(button)
        bar.pushWidget(message, level, 0)
        self.message = message

    def _forget(self, *_):
        self.message = None

    def _close_message(self):
        message, self.message = self.message, None
        if message is not None:
            message.destroyed.disconnect(self._forget)
            self.iface.messageBar().popWidget(message)
