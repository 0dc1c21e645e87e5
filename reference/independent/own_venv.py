"""Runs a script inside a virtual environment of its own, made on first use from requirements.txt."""

import os
import pathlib
import subprocess
import sys
import venv

HERE = pathlib.Path(__file__).resolve().parent
PLACE = HERE / ".venv"
REQUIREMENTS = HERE / "requirements.txt"
STAMP = PLACE / "requirements.stamp"


def python():
    folder = PLACE / ("Scripts" if os.name == "nt" else "bin")
    return folder / ("python.exe" if os.name == "nt" else "python")


def enter():
    """Starts the running script again with the pinned libraries, unless it already runs with them."""
    if pathlib.Path(sys.prefix).resolve() == PLACE.resolve():
        return
    wanted = REQUIREMENTS.read_text()
    if not STAMP.exists() or STAMP.read_text() != wanted:
        venv.create(PLACE, with_pip=True, clear=True)
        subprocess.run(
            [python(), "-m", "pip", "install", "--quiet", "--disable-pip-version-check", "--only-binary", ":all:",
             "--requirement", REQUIREMENTS],
            check=True,
        )
        STAMP.write_text(wanted)
    os.execv(python(), [str(python()), *sys.argv])
