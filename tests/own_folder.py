"""Every test run has a student's folder of its own.

A box that somebody keeps in their lessons can then neither break the tests nor be broken by them.
Kernels that run notebooks inherit the variable.
"""

import atexit
import os
import shutil
import tempfile

FOLDER = tempfile.mkdtemp(prefix="workbook-tests-")
os.environ["WORKBOOK_FOLDER"] = FOLDER
atexit.register(shutil.rmtree, FOLDER, ignore_errors=True)
