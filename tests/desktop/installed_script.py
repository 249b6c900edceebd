"""Runs inside the real window with an empty profile: installs the archive by the host's own installer, opens the
example and runs the chain with what was installed.
"""

import os
from pathlib import Path

import qgis.utils
from qgis.core import QgsProcessingFeedback, QgsProject
from stage import PLACE, SEEN, Clicker, messages, play, plugin, settle, trigger, until, until_drawn


def install():
    from pyplugin_installer import instance

    assert "tautline" not in qgis.utils.available_plugins
    instance().installFromZipFile(os.environ["TAUTLINE_ARCHIVE"])
    until(lambda: "tautline" in qgis.utils.active_plugins, "the plugin installed and started", messages)
    import tautline

    SEEN["place"] = str(Path(tautline.__file__).parent)
    SEEN["version"] = qgis.utils.pluginMetadata("tautline", "version")
    SEEN["provider"] = plugin().provider is not None


def open_example():
    clicker = Clicker("Temporary folder")
    trigger("tautline_open_example")
    SEEN["asked"] = clicker.done()
    until_drawn()
    settle()
    SEEN["layers"] = sorted(layer.name() for layer in QgsProject.instance().mapLayers().values())
    SEEN["valid"] = all(layer.isValid() for layer in QgsProject.instance().mapLayers().values())


def run_chain():
    import processing

    sample = Path(SEEN["place"]) / "sample_layers" / "range"
    made = {name: str(PLACE / f"{name}.gpkg") for name in ("placed", "residuals", "fitted", "schedule")}

    def run(entry, **given):
        return processing.run(f"tautline:{entry}", given, feedback=QgsProcessingFeedback(False))

    axis = str(sample / "axis.gpkg")
    run("placestations", INPUT=str(sample / "heights.csv"), AXIS=axis, OUTPUT=made["placed"])
    found = run("designheights", STATIONS=made["placed"], AXIS=axis, TOLERANCE=0.01, OUTPUT=made["residuals"])
    run("fitreference", STATIONS=made["placed"], AXIS=axis, OUTPUT=made["fitted"], REFERENCE="memory:")
    run("scheduleadjustments", STATIONS=made["residuals"], OUTPUT=made["schedule"])
    run("reviewreport", STATIONS=made["residuals"], HTML=str(PLACE / "report.html"), PDF=str(PLACE / "report.pdf"))
    SEEN["count"] = found["COUNT"]
    SEEN["files"] = {path.name: path.stat().st_size for path in PLACE.iterdir() if path.is_file()}


play(install, open_example, run_chain)
