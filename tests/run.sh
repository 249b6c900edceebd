#!/usr/bin/env bash
# Installs what is missing, checks format and names, and runs every test on the host at hand. Arguments go to pytest.
set -euo pipefail
root=$(cd "$(dirname "${BASH_SOURCE[0]}")/.." && pwd)
. "$root/sample_layers/install_missing.sh"
install_missing qgis python3-qgis python3-numpy python3-pyproj python3-scipy python3-matplotlib python3-jinja2 proj-data \
    python3-pytest python3-mpmath python3-geographiclib python3-venv python3-flake8 python3-hypothesis python3-pyqt6 qt6-l10n-tools git xvfb xauth poppler-utils
cd "$root"

# The formatter and linter in an environment of its own: pyproject.toml names its version, and no Debian release has it.
tools=${XDG_CACHE_HOME:-$HOME/.cache}/tautline-tools
scanners="bandit==1.9.4 detect-secrets==1.5.0"
version=$(sed -n 's/^required-version = "==\([0-9.]*\)".*/\1/p' pyproject.toml)
if ! "$tools/bin/ruff" --version 2>/dev/null | grep -qx "ruff $version" || [ ! -x "$tools/bin/detect-secrets" ]; then
    rm -rf "$tools"
    /usr/bin/python3 -m venv "$tools" && "$tools/bin/pip" install -q --disable-pip-version-check "ruff==$version" $scanners || {
        echo "ruff $version could not be installed; format and names are not checked." >&2
        [ -z "${CI:-}" ] || exit 1
        tools=
    }
fi
if [ -n "$tools" ]; then
    "$tools/bin/ruff" format --check --quiet . || { echo "Not formatted; run: ruff format ." >&2; exit 1; }
    "$tools/bin/ruff" check --quiet .
    # As the plugin portal scans an upload: any finding blocks it.
    "$tools/bin/python" tests/release/archive.py --scan
fi
/usr/bin/python3 -m flake8 .

# The host's own Python: another one first on the path has no host.
exec env -u QGIS_PLUGINPATH QT_QPA_PLATFORM=offscreen PYTHONDONTWRITEBYTECODE=1 /usr/bin/python3 -m pytest -q "$@" tests
