"""The checkout's folder has any name; tests import it by the plugin's own."""

import importlib.util
import os
import pathlib
import sys

import pytest

ROOT = pathlib.Path(__file__).resolve().parents[1]
NAME = "tautline"

if NAME not in sys.modules:
    _spec = importlib.util.spec_from_file_location(NAME, ROOT / "__init__.py", submodule_search_locations=[str(ROOT)])
    _module = importlib.util.module_from_spec(_spec)
    sys.modules[NAME] = _module
    _spec.loader.exec_module(_module)


def pytest_addoption(parser):
    parser.addoption("--long", action="store_true", help="many more random cases and kills: minutes, not seconds")


@pytest.fixture
def window_library(host):
    """The host's window library; a host built without it, as those for servers are, has nothing to test here."""
    return pytest.importorskip("qgis.gui", reason="this host was built without its window library")


@pytest.fixture
def providers(host):
    """``providers('delimitedtext')``: skip where the host was built without that data provider."""
    from qgis.core import QgsProviderRegistry

    def needed(*names):
        missing = set(names) - set(QgsProviderRegistry.instance().providerList())
        if missing:
            pytest.skip(f"this host was built without its provider {', '.join(sorted(missing))}")

    return needed


@pytest.fixture(scope="session")
def host():
    """The host with its toolbox and our provider, without a window."""
    os.environ.setdefault("QT_QPA_PLATFORM", "offscreen")
    from qgis.core import QgsApplication
    from qgis.testing import start_app

    application = start_app(cleanup=False)
    for folder in ("/usr/share/qgis/python/plugins", os.path.join(QgsApplication.pkgDataPath(), "python", "plugins")):
        if os.path.isdir(folder) and folder not in sys.path:
            sys.path.append(folder)
    from processing.core.Processing import Processing

    Processing.initialize()
    from tautline.plugin.provider import TautlineProvider

    provider = TautlineProvider()
    QgsApplication.processingRegistry().addProvider(provider)
    yield application
    QgsApplication.processingRegistry().removeProvider(provider)


@pytest.fixture(scope="session")
def guide():
    """The pages of the guide by name; those that the first one lists come in its order."""
    spec = importlib.util.spec_from_file_location("guide_reader", ROOT / "tests" / "guide_reader.py")
    reader = importlib.util.module_from_spec(spec)
    spec.loader.exec_module(reader)
    folder = ROOT / "plugin" / "guide"
    first = reader.Page(folder / "index.html")
    listed = [node.attributes["href"] for node in first.root.all("a")]
    names = dict.fromkeys([first.name, *listed, *sorted(path.name for path in folder.glob("*.html"))])
    return {name: reader.Page(folder / name) for name in names}
