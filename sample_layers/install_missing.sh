# Sourced by run_demo.sh and tests/run.sh: install_missing PACKAGE... on Debian and Ubuntu; elsewhere say what is needed.

install_missing() {
    local missing=() package
    if ! command -v dpkg-query >/dev/null; then
        if [ -x /usr/bin/python3 ] && /usr/bin/python3 -c 'import qgis.core, pyproj, numpy' 2>/dev/null; then
            return 0
        fi
        echo "This is not Debian or Ubuntu. Needed: QGIS 3.22 or later with its Python as /usr/bin/python3," >&2
        echo "and what Debian calls: $*" >&2
        return 1
    fi
    for package in "$@"; do
        [ "$(dpkg-query -W -f '${db:Status-Status}' "$package" 2>/dev/null)" = installed ] || missing+=("$package")
    done
    [ ${#missing[@]} -eq 0 ] && return 0
    local run=()
    if [ "$(id -u)" -ne 0 ]; then
        command -v sudo >/dev/null || { echo "Missing: ${missing[*]}. Install them as root, then run again." >&2; return 1; }
        run=(sudo)
    fi
    echo "Installing ${missing[*]} ..."
    local log
    log=$(mktemp)
    if ! { "${run[@]}" apt-get update && "${run[@]}" env DEBIAN_FRONTEND=noninteractive \
        apt-get install -y --no-install-recommends "${missing[@]}"; } >"$log" 2>&1 </dev/null; then
        tail -n 15 "$log" >&2
        echo "The installation failed; the whole log is $log." >&2
        return 1
    fi
    rm -f "$log"
}
