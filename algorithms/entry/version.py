"""The plugin's version, read from metadata.txt, the one place it is written."""

import configparser
from pathlib import Path

_METADATA = configparser.ConfigParser(interpolation=None)
_METADATA.read(Path(__file__).resolve().parents[2] / "metadata.txt", encoding="utf-8")
VERSION = _METADATA.get("general", "version", fallback="0")
