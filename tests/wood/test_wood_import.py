"""Importing the room is light: it is on the way to every slider and every command."""

import subprocess
import sys


def test_importing_the_room_loads_no_heavy_library():
    code = (
        "import sys, toolkit.wood; "
        "heavy = {'numpy', 'scipy', 'matplotlib', 'pint', 'pydantic', 'ipywidgets', 'tomlkit'}; "
        "print(sorted(heavy & set(sys.modules)))"
    )
    done = subprocess.run([sys.executable, "-c", code], capture_output=True, text=True, check=True)
    assert done.stdout.strip() == "[]"
