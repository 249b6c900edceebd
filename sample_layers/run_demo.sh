#!/usr/bin/env bash
# The whole job on the gallery scenario through the host's command line: bash sample_layers/run_demo.sh [FOLDER]
set -euo pipefail
here=$(cd "$(dirname "${BASH_SOURCE[0]}")" && pwd)
folder=${1:-tautline_demo}
. "$here/install_missing.sh"
install_missing qgis python3-qgis python3-numpy python3-pyproj python3-scipy python3-matplotlib python3-jinja2 proj-data
mkdir -p "$folder"
folder=$(cd "$folder" && pwd)
result=$folder/gallery.gpkg
rm -f "$result" "$folder/gallery.png" "$folder/curvature.html" "$folder/report.html" "$folder/report.pdf"

# A profile of its own, so that nothing of the user's is read or changed.
private=$(mktemp -d)
trap 'rm -rf "$private"' EXIT
mkdir -p "$private/plugins"
ln -s "$(dirname "$here")" "$private/plugins/tautline"
export HOME=$private XDG_RUNTIME_DIR=$private QGIS_CUSTOM_CONFIG_PATH=$private/profile QGIS_PLUGINPATH=$private/plugins
export QT_QPA_PLATFORM=offscreen PYTHONDONTWRITEBYTECODE=1
process=$(command -v qgis_process.bin || command -v qgis_process)
chmod 700 "$private"

step() {
    echo "== $1"
    shift
    if ! "$process" "$@" >"$private/out" 2>"$private/err"; then
        cat "$private/out" "$private/err" >&2
        exit 1
    fi
    # The entry's own sentences, without the host's progress and its lists of inputs and results.
    sed 's/^[0-9. ]*Understood/Understood/; s/^WARNING:[[:space:]]*/Note: /' "$private/out" |
        sed -n '/^Understood/,/^-----/{/^-----/d;/ - done\.$/d;/^$/d;p}' | fold -s -w 116 | sed 's/^/   /'
}

"$process" plugins enable tautline >/dev/null 2>&1
scenario=$here/gallery
cp "$scenario/axis.gpkg" "$result"
step "Height list onto the axes" run tautline:placestations --INPUT="$scenario/heights.csv" --AXIS="$scenario/axis.gpkg" \
    --OUTPUT="ogr:dbname='$result' table=\"stations\" (geom)" --REJECTED="ogr:dbname='$result' table=\"rejected\""
step "Design heights and residuals" run tautline:designheights --STATIONS="$result|layername=stations" \
    --AXIS="$scenario/axis.gpkg" --UNDULATION=field --OUTPUT="ogr:dbname='$result' table=\"residuals\" (geom)" \
    --SUMMARY="ogr:dbname='$result' table=\"summary\""
step "The plane that both arms share" run tautline:fitreference --STATIONS="$result|layername=stations" \
    --AXIS="$scenario/axis.gpkg" --FIT=plane --SIGMA=0.003 --SIGMA_KM=0.7 --UNDULATION=field \
    --REFERENCE="ogr:dbname='$result' table=\"plane\" (geom)" --ELLIPSE="ogr:dbname='$result' table=\"ellipses\" (geom)" \
    --OUTPUT="ogr:dbname='$result' table=\"tested\" (geom)"
step "Which shape was built" run tautline:testcurvature --STATIONS="$result|layername=stations" --AXIS="$scenario/axis.gpkg" \
    --SIGMA=0.003 --UNDULATION=field --OUTPUT="ogr:dbname='$result' table=\"curvature\"" --HTML="$folder/curvature.html"
step "The review report" run tautline:reviewreport --STATIONS="$result|layername=residuals" --AXIS="$scenario/axis.gpkg" \
    --IMAGERY="$scenario/imagery.tif" --TESTED="$result|layername=tested" --REFERENCE="$result|layername=plane" \
    --CURVATURE="$result|layername=curvature" --PROJECT="Invented example" --STRUCTURE="The gallery" \
    --HTML="$folder/report.html" --PDF="$folder/report.pdf"
echo "== Result"
/usr/bin/python3 "$here/draw_map.py" "$result" "$scenario/imagery.tif" "$folder/gallery.png" 2>"$private/err" || {
    cat "$private/err" >&2
    exit 1
}
echo
echo "Layers, styled, for QGIS:  $result"
echo "Map:                       $folder/gallery.png"
echo "Which shape was built:     $folder/curvature.html"
echo "Review report:             $folder/report.html, report.pdf"
echo "Results are for review; field work follows local codes, and a licensed surveyor or engineer decides."
