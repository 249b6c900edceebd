"""Make the archive that is uploaded and installed, and check it as the plugin portal does.

    /usr/bin/python3 tests/release/archive.py [FOLDER]      makes FOLDER/tautline-VERSION.zip (default: here)
    TOOLS/bin/python tests/release/archive.py --scan        scans what it would hold; bandit, detect-secrets beside it

It holds the files under version control as they stand, but those that .gitattributes keeps out, and each translation
compiled. One file gives the same archive byte for byte.
"""

import configparser
import json
import pathlib
import re
import shutil
import subprocess
import sys
import tempfile
import zipfile

ROOT = pathlib.Path(__file__).resolve().parents[2]
NAME = "tautline"
DATED = (2026, 1, 1, 0, 0, 0)
MOST_BYTES = 25_000_000
# What the portal asks of metadata.txt.
DUE = "name description version qgisMinimumVersion author email about tracker repository homepage".split()
# What it reports or refuses in an archive.
UNWANTED = re.compile(r"(^|/)(\.|__pycache__|__MACOSX|tests/)|\.(pyc|sh|bat|so|dll|exe|ts)$|\.\.")


def _git(*arguments):
    command = ["git", "-c", f"safe.directory={ROOT}", "-C", str(ROOT), *arguments]
    return subprocess.run(command, check=True, capture_output=True, text=True).stdout


def files():
    """Paths below the root that the archive holds, in order."""
    known = [path for path in _git("ls-files", "-z").split("\0") if path and (ROOT / path).is_file()]
    kept_out = set()
    parts = {str(parent) for path in known for parent in pathlib.PurePath(path).parents} | set(known)
    told = _git("check-attr", "export-ignore", "--", *sorted(parts)).splitlines()
    kept_out = {line.split(": ")[0] for line in told if line.endswith(": set")}
    return [
        path
        for path in sorted(known)
        if path not in kept_out and not kept_out & {str(parent) for parent in pathlib.PurePath(path).parents}
    ]


def metadata():
    """metadata.txt as a dict."""
    read = configparser.ConfigParser(interpolation=None)
    read.optionxform = str
    read.read(ROOT / "metadata.txt", encoding="utf-8")
    return dict(read["general"])


def _compiled(folder):
    """Translations compiled into ``folder``: [(path in the archive, file)]."""
    sources = sorted((ROOT / "plugin" / "i18n").glob("*.ts"))
    command = next(filter(None, map(shutil.which, ("lrelease", "lrelease-qt6", "/usr/lib/qt6/bin/lrelease"))), None)
    if sources and command is None:
        raise SystemExit("Translations are compiled by lrelease (qttools5-dev-tools on Debian), which is not here.")
    made = []
    for source in sources:
        target = pathlib.Path(folder) / f"{source.stem}.qm"
        subprocess.run([command, "-silent", str(source), "-qm", str(target)], check=True)
        made.append((f"plugin/i18n/{target.name}", target))
    return made


def made(folder):
    """Make the archive in a folder: its path."""
    path = pathlib.Path(folder) / f"{NAME}-{metadata()['version']}.zip"
    with tempfile.TemporaryDirectory() as compiled, zipfile.ZipFile(path, "w", zipfile.ZIP_DEFLATED) as archive:
        for name, file in sorted([(name, ROOT / name) for name in files()] + _compiled(compiled)):
            entry = zipfile.ZipInfo(f"{NAME}/{name}", DATED)
            entry.external_attr, entry.compress_type = 0o644 << 16, zipfile.ZIP_DEFLATED
            archive.writestr(entry, file.read_bytes())
    return path


def faults(path):
    """What the portal would refuse or report of an archive, a list of sentences."""
    found, about = [], metadata()
    if path.stat().st_size > MOST_BYTES:
        found.append(f"The archive has {path.stat().st_size} bytes.")
    with zipfile.ZipFile(path) as archive:
        names = archive.namelist()
        modes = {one.filename: one.external_attr >> 16 for one in archive.infolist()}
    found += [f"{name} is not below {NAME}/." for name in names if not name.startswith(f"{NAME}/")]
    found += [f"{name} does not belong into an archive." for name in names if UNWANTED.search(name.partition("/")[2])]
    found += [f"{name} is executable." for name in names if modes[name] & 0o111]
    due = [f"{NAME}/{name}" for name in ("__init__.py", "metadata.txt", "LICENSE", "README.md", about["icon"])]
    found += [f"{name} is missing." for name in due if name not in names]
    found += [f"metadata.txt lacks {key}." for key in DUE if not about.get(key, "").strip()]
    if "/" in about.get("author", "") or "\n" in about.get("description", ""):
        found.append("metadata.txt: an author without a slash and a description of one line are due.")
    return found


def scanned(folder):
    """What bandit and detect-secrets find in an unpacked archive, a list of lines."""
    tools = pathlib.Path(sys.executable).parent
    told = subprocess.run(
        [str(tools / "bandit"), "-q", "-r", NAME, "-f", "json"], cwd=folder, capture_output=True, text=True
    )
    results = json.loads(told.stdout)["results"]
    found = [f"{one['filename']}:{one['line_number']} {one['test_id']} {one['issue_text']}" for one in results]
    told = subprocess.run(
        [str(tools / "detect-secrets"), "scan", "--all-files", NAME],
        cwd=folder,
        capture_output=True,
        text=True,
        check=True,
    )
    for name, secrets in json.loads(told.stdout)["results"].items():
        found += [f"{name}:{one['line_number']} {one['type']}" for one in secrets]
    return found


def main(arguments):
    with tempfile.TemporaryDirectory() as folder:
        if arguments == ["--scan"]:
            path = made(folder)
            with zipfile.ZipFile(path) as archive:
                archive.extractall(folder)
            found = faults(path) + scanned(folder)
        else:
            path = made(arguments[0] if arguments else ".")
            found = faults(path)
            print(f"{path}: {path.stat().st_size / 1e6:.1f} MB")
    for one in found:
        print(one, file=sys.stderr)
    return 1 if found else 0


if __name__ == "__main__":
    sys.exit(main(sys.argv[1:]))
