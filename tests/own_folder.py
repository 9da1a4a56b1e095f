"""Every test run has a student's folder of its own.

A box that somebody keeps in their lessons can then neither break the tests nor be broken by them.
Kernels that run notebooks inherit the variable.

And it keeps bytecode, whatever the shell says: else each of some sixty kernels, servers and
commands would compile Jupyter's and the workbook's modules anew.
"""

import atexit
import os
import shutil
import sys
import tempfile

FOLDER = tempfile.mkdtemp(prefix="workbook-tests-")
os.environ["WORKBOOK_FOLDER"] = FOLDER
atexit.register(shutil.rmtree, FOLDER, ignore_errors=True)

sys.dont_write_bytecode = False
os.environ.pop("PYTHONDONTWRITEBYTECODE", None)
