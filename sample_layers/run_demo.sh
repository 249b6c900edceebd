#!/usr/bin/env bash
# The whole job on the range scenario through the host's command line: bash sample_layers/run_demo.sh [FOLDER]
set -euo pipefail
here=$(cd "$(dirname "${BASH_SOURCE[0]}")" && pwd)
folder=${1:-tautline_demo}
. "$here/install_missing.sh"
install_missing qgis python3-qgis python3-numpy python3-pyproj python3-scipy python3-matplotlib python3-jinja2 proj-data
mkdir -p "$folder"
folder=$(cd "$folder" && pwd)
result=$folder/range.gpkg
rm -f "$result" "$folder"/{range.png,levelling.html,comparison.html,curvature.html,schedule.html,report.html,report.pdf}

# A profile of its own, so that nothing of the user's is read or changed.
private=$(mktemp -d)
trap 'rm -rf "$private"' EXIT
mkdir -p "$private/plugins"
ln -s "$(dirname "$here")" "$private/plugins/tautline"
export HOME=$private XDG_RUNTIME_DIR=$private QGIS_CUSTOM_CONFIG_PATH=$private/profile QGIS_PLUGINPATH=$private/plugins
export QT_QPA_PLATFORM=offscreen PYTHONDONTWRITEBYTECODE=1
process=$(command -v qgis_process.bin || command -v qgis_process)
chmod 700 "$private"

# step TITLE WHAT_TO_SHOW run ENTRY ...: the entry's sentences that hold WHAT_TO_SHOW (an extended regular expression).
step() {
    echo "== $1"
    local show=$2
    shift 2
    if ! "$process" "$@" >"$private/out" 2>"$private/err"; then
        cat "$private/out" "$private/err" >&2
        exit 1
    fi
    sed 's/^[0-9. ]*Understood/Understood/; s/^WARNING:[[:space:]]*/Note: /' "$private/out" |
        sed -n '/^Understood/,/^-----/{/^-----/d;p}' | { grep -E "$show" || true; } | fold -s -w 116 | sed 's/^/   /'
}

"$process" plugins enable tautline >/dev/null 2>&1
scenario=$here/range
table() { echo "ogr:dbname='$result' table=\"$1\"${2:+ ($2)}"; }
cp "$scenario/axis.gpkg" "$result"
step "The height list onto the axes" "^[0-9]+ rows placed" run tautline:placestations --INPUT="$scenario/heights.csv" \
    --AXIS="$scenario/axis.gpkg" --UNDULATION=field --OUTPUT="$(table stations geom)" --REJECTED="$(table rejected)"
step "The levelling that the heights come from" "misclosure|Adjusted|adjusted|global" run tautline:adjustlevelling \
    --INPUT="$scenario/levelling.csv" --BENCHMARKS="$scenario/benchmarks.csv" --SIGMA_KM=0.7 \
    --STATIONS="$result|layername=stations" --NAME_FIELD=point --OUTPUT="$(table heights)" \
    --POINTS="$(table levelled geom)" --COVARIANCE="$(table covariance)" --SUMMARY="$folder/levelling.html"
# The axis was drawn by hand on the imagery, so the line is judged by the stations themselves.
step "Level and line: design heights and residuals" "residuals, RMS|line from" run tautline:designheights \
    --STATIONS="$result|layername=levelled" --AXIS="$scenario/axis.gpkg" --LINE=fitted --LINE_TOLERANCE=0.01 \
    --OUTPUT="$(table residuals geom)" --SUMMARY="$(table summary)"
step "The plane that all three runs share" "RMS|semi-axes|Note" run tautline:fitreference \
    --STATIONS="$result|layername=levelled" --AXIS="$scenario/axis.gpkg" --FIT=plane --SIGMA=0.003 \
    --COVARIANCE="$result|layername=covariance" --NAME_FIELD=point --REFERENCE="$(table plane geom)" \
    --ELLIPSE="$(table ellipses geom)" --OUTPUT="$(table tested geom)"
step "Which shape was built" "curvature factor" run tautline:testcurvature --STATIONS="$result|layername=levelled" \
    --AXIS="$scenario/axis.gpkg" --SIGMA=0.003 --COVARIANCE="$result|layername=covariance" --NAME_FIELD=point \
    --OUTPUT="$(table curvature)" --HTML="$folder/curvature.html"
step "Deviations drawn on the map" "[Bb]ars are" run tautline:drawdeviations --STATIONS="$result|layername=residuals" \
    --AXIS="$scenario/axis.gpkg" --LONGEST_BAR=220 --SIDE=left --DISTANCE=260 --STRIP_EXAGGERATION=400 \
    --BARS="$(table bars geom)" --BAND="$(table band geom)" --STRIP="$(table strip geom)" \
    --LINE_BARS="$(table line_bars geom)" --PLAN="$(table plan geom)"
step "What to raise and lower" "Raise|Left out" run tautline:scheduleadjustments \
    --STATIONS="$result|layername=residuals" --TESTED="$result|layername=tested" --STEP=0.001 --OUTPUT="$(table schedule geom)" --SHEET="$folder/schedule.html"
step "The same structure a year later" "^[0-9]+ rows placed" run tautline:placestations --INPUT="$scenario/heights_later.csv" \
    --AXIS="$scenario/axis.gpkg" --UNDULATION=field --OUTPUT="$(table later geom)"
step "What has moved since" "greatest change" run tautline:comparesurveys \
    --SURVEYS="$result|layername=levelled" --SURVEYS="$result|layername=later" --SIGMA=0.0008 \
    --OUTPUT="$(table changes geom)" --REPORT="$folder/comparison.html"
step "The review report" "Verdict|verdict|not built|built to|in line" run tautline:reviewreport \
    --STATIONS="$result|layername=residuals" --AXIS="$scenario/axis.gpkg" --IMAGERY="$scenario/imagery.tif" \
    --TESTED="$result|layername=tested" --REFERENCE="$result|layername=plane" --CURVATURE="$result|layername=curvature" \
    --SIGMA=0.003 --SIGMA_LINE=0.002 --PROJECT="Invented example" --STRUCTURE="The range" --HTML="$folder/report.html" --PDF="$folder/report.pdf"
echo "== Result"
/usr/bin/python3 "$here/draw_map.py" "$result" "$scenario/imagery.tif" "$folder/range.png" 2>"$private/err" || {
    cat "$private/err" >&2
    exit 1
}
echo
echo "Layers, styled, for QGIS:  $result"
echo "Map:                       $folder/range.png"
echo "Review report:             $folder/report.html, report.pdf"
echo "Pages:                     levelling.html, curvature.html, schedule.html, comparison.html"
echo "Results are for review; field work follows local codes, and a licensed surveyor or engineer decides."
