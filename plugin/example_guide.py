"""The example's text: a few sentences that teach the idea, shown beside the map and kept beside the project."""

from qgis.gui import QgsDockWidget
from qgis.PyQt.QtCore import pyqtSignal
from qgis.PyQt.QtWidgets import QHBoxLayout, QPushButton, QTextBrowser, QVBoxLayout, QWidget

from ..algorithms.language.translation import language, tr


def text(with_bars, heading="h3"):
    """The text as HTML; ``with_bars``: the map shows residual bars and profile strips; ``heading``: the tag of its
    headings."""
    parts = [
        (heading, tr("Straight is not level")),
        (
            "p",
            tr(
                "This range is invented. From its hub three covered runs carry light over a high plain: Alder, 2.6 km "
                "long, Birch, 1.9 km, and Cedar, 1.3 km. They were meant to lie in one flat plane, as straight as the "
                "light. The level surface, on which water would come to rest, is not flat: over the length of Alder "
                "it falls 0.52 m below the line that starts out along it. So the heights above the sea must rise "
                "towards the far end, although nothing bends."
            ),
        ),
        (heading, tr("What the map shows")),
        (
            "li",
            tr(
                "Each mark is a station. Small circles, green, are within 10 mm of the plane; triangles that point up, "
                "orange, were built too high, those that point down, blue, too low; white circles were not read."
            ),
        ),
        (
            "li",
            tr(
                "0+850 of Alder is one station far off between good neighbours: most likely a reading error. Around "
                "1+650 several neighbours are low together: the ground has settled. On Cedar nothing is out in "
                "height."
            ),
        ),
        (
            "li",
            tr(
                "Level is how high a station stands, line how far to the side, and one says nothing of the other. "
                "0+900 of Cedar is right in height, but a wheel has knocked it 15 mm to the left of the straight line "
                "that fits its run best: that line judges, for the axis was drawn by hand on the imagery."
            ),
        ),
        (
            "li",
            tr(
                "The triangle is the level point of the plane that fits all three runs best: only there would water on "
                "it stand still. The cross is its tangent point, where it is parallel to the ellipsoid of the "
                "coordinates."
            ),
        ),
        (
            "li",
            tr(
                "The ellipses say how well these places are known: each lies inside its own with a probability of 95 "
                "percent. Levelling finds the level point by itself; the tangent point also needs to know which way is "
                "down, and one second of arc moves it by 31 m."
            ),
        ),
    ]
    if with_bars:
        parts.append(
            (
                "li",
                tr(
                    "Bars across the runs are the residuals, exaggerated; a bar that leaves the pale band is out of "
                    "tolerance. The strip beside each run is its profile."
                ),
            )
        )
    parts += [
        (heading, tr("What to try")),
        (
            "li",
            tr(
                "In the profile, switch between heights above the level surface and heights from the straight line. It "
                "is one survey, seen by the water and seen by the light. Choose the axis Cedar there and switch on "
                "'Line': one station stands to the left of its neighbours."
            ),
        ),
        (
            "li",
            tr(
                "Run Design heights and residuals again with the Earth model 'flat', under its advanced parameters. "
                "The far end of Alder is then out by 0.52 m, though nobody built it wrong: such a drawing ignores "
                "curvature."
            ),
        ),
        ("li", tr("Start the guided run: it asks four questions and says what it understood of your own data.")),
        (
            "p",
            tr("Results are for review. Field work follows local codes, and a licensed surveyor or engineer decides."),
        ),
    ]
    html, inside = [], False
    for tag, words in parts:
        if (tag == "li") != inside:
            html.append("</ul>" if inside else "<ul>")
            inside = not inside
        html.append(f"<{tag}>{words}</{tag}>")
    return "\n".join(html)


def page(with_bars):
    """The same as a file that any browser opens."""
    title = tr("Read me first")
    return (
        f'<!DOCTYPE html>\n<html lang="{language()}"><head><meta charset="utf-8">'
        '<meta name="viewport" content="width=device-width, initial-scale=1">'
        f"<title>{title}</title>"
        "<style>body {font-family: sans-serif; max-width: 40em; margin: 2em auto; padding: 0 1em; line-height: 1.5}"
        "</style></head>\n"
        f"<body><main>\n<h1>{title}</h1>\n{text(with_bars, 'h2')}\n</main></body></html>\n"
    )


class ExampleGuide(QgsDockWidget):
    """The text in a dock, with buttons for what it says to try."""

    form_wanted = pyqtSignal()
    guided_wanted = pyqtSignal()

    def __init__(self, window, with_bars):
        super().__init__(tr("Read me first"), window)
        self.setObjectName("tautline_example_guide")
        self.browser = QTextBrowser()
        self.browser.setAccessibleName(tr("Read me first"))
        self.browser.setFrameShape(QTextBrowser.Shape.NoFrame)
        self.browser.document().setDocumentMargin(10)
        # Lists a little closer to the edge than a browser's own, in a panel this narrow.
        self.browser.document().setIndentWidth(18)
        self.browser.setHtml(text(with_bars))
        self.form_button, self.guided_button = QPushButton(tr("Run it again…")), QPushButton(tr("Guided run"))
        self.form_button.setToolTip(tr("The form of Design heights and residuals, filled in for the example."))
        self.form_button.clicked.connect(lambda: self.form_wanted.emit())
        self.guided_button.clicked.connect(lambda: self.guided_wanted.emit())
        buttons = QHBoxLayout()
        buttons.setContentsMargins(10, 6, 10, 10)
        for button in (self.form_button, self.guided_button):
            buttons.addWidget(button)
        body = QWidget()
        column = QVBoxLayout(body)
        column.setContentsMargins(0, 0, 0, 0)
        column.addWidget(self.browser, 1)
        column.addLayout(buttons)
        body.setMinimumWidth(24 * self.fontMetrics().averageCharWidth() + 60)
        self.setWidget(body)
