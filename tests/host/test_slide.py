"""The slide of a review, read back: its size, its map, what it says, how large, and whether grey tells all apart."""

import shutil
import subprocess
from pathlib import Path

import numpy as np
import pytest

qgis_core = pytest.importorskip("qgis.core")
pytest.importorskip("matplotlib")

SAMPLE = Path(__file__).resolve().parents[2] / "sample_layers" / "range"


@pytest.fixture(scope="module")
def made(host, tmp_path_factory):
    """The range's slide as picture and page, with the report that says the same."""
    import processing

    folder, axis = tmp_path_factory.mktemp("slide"), str(SAMPLE / "axis.gpkg")

    def run(entry, **parameters):
        return processing.run(f"tautline:{entry}", parameters, feedback=qgis_core.QgsProcessingFeedback(False))

    place = {name: str(folder / f"{name}.gpkg") for name in ("stations", "residuals")}
    run("placestations", INPUT=str(SAMPLE / "heights.csv"), AXIS=axis, OUTPUT=place["stations"])
    run("designheights", STATIONS=place["stations"], AXIS=axis, UNDULATION="field", OUTPUT=place["residuals"])
    common = {
        "STATIONS": place["residuals"],
        "AXIS": axis,
        "IMAGERY": str(SAMPLE / "imagery.tif"),
        "STRUCTURE": "Range",
        "SIGMA": 0.003,
    }
    found = {"folder": folder, **place}
    found["png"] = run("reviewreport", SLIDE=str(folder / "slide.png"), **common)["SLIDE"]
    found["pdf"] = run("reviewreport", SLIDE=str(folder / "slide.pdf"), HTML=str(folder / "r.html"), **common)["SLIDE"]
    found["html"] = (folder / "r.html").read_text("utf-8")
    return found


def picture(path):
    """(height, width, 3) of the colours of a picture, 0 to 255."""
    from matplotlib.image import imread

    return np.round(imread(path)[:, :, :3] * 255.0)


def test_the_picture_is_16_to_9_and_large(made):
    height, width, _ = picture(made["png"]).shape
    assert width >= 1920 and width * 9 == height * 16
    assert Path(made["png"]).read_bytes().startswith(b"\x89PNG") and Path(made["pdf"]).read_bytes().startswith(b"%PDF")


def test_map_and_profile_are_not_blank(made):
    image = picture(made["png"])
    height, width, _ = image.shape
    shown = image[int(0.25 * height) : int(0.82 * height), int(0.04 * width) : int(0.36 * width)]
    colours = np.unique(shown.reshape(-1, 3), axis=0)
    assert len(colours) > 2000 and np.mean(np.all(shown > 250, axis=2)) < 0.3, "imagery lies under the map"
    for low, high in ((0.27, 0.53), (0.64, 0.79)):
        chart = image[int(low * height) : int(high * height), int(0.47 * width) : int(0.97 * width)]
        assert 0.02 < np.mean(np.any(chart < 200, axis=2)) < 0.5


def words(path):
    if shutil.which("pdftotext") is None:
        pytest.skip("pdftotext is not installed (package poppler-utils)")
    return subprocess.run(["pdftotext", "-layout", path, "-"], capture_output=True, check=True).stdout.decode()


def test_the_verdict_is_the_reports_own_sentence(made):
    text = " ".join(words(made["pdf"]).split())
    sentence = text[text.index("Range") : text.index("within it.") + len("within it.")]
    assert "was not built to its design" in sentence and sentence in " ".join(made["html"].split())
    for said in ("level surface", "straight design", "no curvature", "heights exaggerated ×", "too high", "too low"):
        assert said in text, said
    assert "licensed surveyor or engineer" in text and "For review" in text and "Alder" in text
    # sample_layers/README.md: the design at 2+600 of Alder is 0.52 m above the design with no curvature.
    assert "523.4 mm" in text


@pytest.fixture
def drawn(made, monkeypatch):
    """The figure of the slide, as it is before it is written."""
    import processing

    from tautline.algorithms.report import slide

    kept = []
    original = slide.slide_figure
    monkeypatch.setattr(slide, "slide_figure", lambda *given: kept.append(original(*given)) or kept[-1])
    processing.run(
        "tautline:reviewreport",
        {"STATIONS": made["residuals"], "SLIDE": str(made["folder"] / "other.png")},
        feedback=qgis_core.QgsProcessingFeedback(False),
    )
    return kept[0]


def test_every_text_is_24_pixels_or_more_and_none_is_cut_or_covered(drawn):
    from matplotlib.text import Text

    drawn.canvas.draw()
    pixels = 1920.0 / drawn.get_size_inches()[0] / 72.0
    texts = [one for one in drawn.findobj(Text) if one.get_text().strip() and one.get_visible()]
    assert len(texts) > 15
    assert min(one.get_fontsize() * pixels for one in texts) >= 24.0
    # Ticks beyond an axis' range are there and not drawn.
    beyond = {
        label
        for axes in drawn.axes
        for line, ends in ((axes.xaxis, axes.get_xlim()), (axes.yaxis, axes.get_ylim()))
        for at, label in zip(line.get_ticklocs(), line.get_ticklabels())
        if not min(ends) <= at <= max(ends)
    }
    boxes = {one: one.get_window_extent() for one in texts if one not in beyond}
    for one, box in boxes.items():
        inside = drawn.bbox.x0 <= box.x0 and box.x1 <= drawn.bbox.x1 and drawn.bbox.y0 <= box.y0
        assert inside and box.y1 <= drawn.bbox.y1, one.get_text()
    charts = [axes.bbox for axes in drawn.axes]
    for name in ("verdict", "caution"):
        box = next(box for one, box in boxes.items() if one.get_gid() == name)
        assert not any(box.overlaps(chart) for chart in charts), name
        assert not any(box.overlaps(other) for one, other in boxes.items() if one.get_gid() != name), name


def test_lines_and_marks_differ_without_colour(drawn):
    """By dashes and shapes alone; no two marks share one, and the lines' greys are dark enough on paper."""
    lines = [line for line in drawn.axes[1].lines if line.get_linestyle() not in ("None", "none")]
    assert len({str(line._unscaled_dash_pattern) for line in lines}) == len(lines) == 3
    handles = drawn.legends[0].get_lines()
    marks = [one.get_marker() for one in handles if one.get_linestyle() in ("None", "none")]
    named = [text.get_text() for text in drawn.legends[0].get_texts()]
    assert "too high" in named and "too low" in named and {"^", "v"} <= set(marks)
    from matplotlib.colors import to_rgb

    for line in lines:
        assert np.dot(to_rgb(line.get_color()), (0.299, 0.587, 0.114)) < 0.6


def reviewed(number=5, **more):
    return [
        {
            "at": (500000.0 + 10 * k, 5540000.0),
            "axis": "line",
            "station": f"0+{10 * k:03d}",
            "chainage": 10.0 * k,
            "design_h": 50.0,
            "residual": 0.001 * k,
            **more,
        }
        for k in range(number)
    ]


def test_without_imagery_tolerance_or_curve(toolbox, tmp_path):
    layer = toolbox.points(reviewed(), "EPSG:32631", name="A " + "very long name of a structure " * 8)
    run = toolbox.run("reviewreport", OUTPUT=None, STATIONS=layer, SLIDE=str(tmp_path / "s.png"))
    assert picture(run.results["SLIDE"]).shape[1] >= 1920 and "HTML" not in run.results


def test_what_cannot_be_shown_is_refused(toolbox, tmp_path):
    layer = toolbox.points(reviewed(), "EPSG:32631", name="stations")
    for name, more, said in (
        ("s.gif", {}, "must end in .png or .pdf"),
        ("s.png", {"SLIDE_AXIS": "other"}, "no axis 'other'"),
    ):
        text = toolbox.refusal("reviewreport", OUTPUT=None, STATIONS=layer, SLIDE=str(tmp_path / name), **more)
        assert said in text and not (tmp_path / name).exists()
    alone = toolbox.points(reviewed(1), "EPSG:32631", name="stations")
    text = toolbox.refusal("reviewreport", OUTPUT=None, STATIONS=alone, SLIDE=str(tmp_path / "s.png"))
    assert "no profile to show" in text
    assert "SLIDE" in toolbox.refusal("reviewreport", OUTPUT=None, STATIONS=layer)


def test_the_axis_that_is_asked_for(made):
    import processing

    found = processing.run(
        "tautline:reviewreport",
        {"STATIONS": made["residuals"], "SLIDE_AXIS": "Birch", "SLIDE": str(made["folder"] / "east.pdf")},
        feedback=qgis_core.QgsProcessingFeedback(False),
    )
    assert "Profile of Birch" in " ".join(words(found["SLIDE"]).split())
