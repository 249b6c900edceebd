"""Make the pictures of README and guide anew: /usr/bin/python3 tests/desktop/pictures.py [FOLDER]

Opens the example in the real window, on a screen and in a profile of their own, and runs the demo; writes
``example.jpg``, ``review.jpg`` and ``range.jpg`` into FOLDER (default: plugin/guide). No name of a user, no date of the
day and no tag of any program is in them.
"""

import os
import subprocess
import sys
import tempfile
from pathlib import Path

from conftest import ROOT, driven, virtual_screen
from osgeo import gdal

WINDOW = ("example", "review")
# Pixels of the widest picture, and the quality of the JPEG.
WIDEST, QUALITY = 1480, 84


def bare_jpeg(source, target):
    """The colours of a picture as a JPEG that holds nothing else."""
    gdal.UseExceptions()
    picture = gdal.Open(str(source))
    width = min(picture.RasterXSize, WIDEST)
    smaller = gdal.Translate("", picture, format="MEM", bandList=[1, 2, 3], width=width, resampleAlg="lanczos")
    # A copy of the colours alone knows no tags of the file they came from.
    bare = gdal.GetDriverByName("MEM").Create("", smaller.RasterXSize, smaller.RasterYSize, 3, gdal.GDT_Byte)
    bare.WriteArray(smaller.ReadAsArray())
    gdal.GetDriverByName("JPEG").CreateCopy(str(target), bare, options=[f"QUALITY={QUALITY}", "PROGRESSIVE=ON"])


def main(folder):
    os.environ["GDAL_PAM_ENABLED"] = "NO"
    with tempfile.TemporaryDirectory() as place:
        place = Path(place)
        subprocess.run(["bash", str(ROOT / "sample_layers" / "run_demo.sh"), str(place / "demo")], check=True)
        bare_jpeg(place / "demo" / "range.png", folder / "range.jpg")
        with virtual_screen(place / "screen.txt") as screen:
            driven(screen, place, "pictures_script.py")
        for name in WINDOW:
            bare_jpeg(place / f"{name}.png", folder / f"{name}.jpg")


if __name__ == "__main__":
    main(Path(sys.argv[1]).resolve() if len(sys.argv) > 1 else ROOT / "plugin" / "guide")
