#!/usr/bin/env bash
# Installs what is missing and runs every test on the host at hand. Arguments go to pytest.
set -euo pipefail
root=$(cd "$(dirname "${BASH_SOURCE[0]}")/.." && pwd)
. "$root/sample_layers/install_missing.sh"
install_missing qgis python3-qgis python3-numpy python3-pyproj python3-scipy python3-matplotlib python3-jinja2 proj-data \
    python3-pytest python3-mpmath python3-geographiclib xvfb xauth poppler-utils
cd "$root"
# The host's own Python: another one first on the path has no host.
exec env -u QGIS_PLUGINPATH QT_QPA_PLATFORM=offscreen PYTHONDONTWRITEBYTECODE=1 /usr/bin/python3 -m pytest -q "$@" tests
