"""Every server of the workbook: JupyterLab on the lessons, and the lessons without code.

``server`` loads Voilà, which takes a second, and only once a command has been read.
"""

from toolkit.room.lab import lab_command, open_lessons, settings_folder
from toolkit.room.show import serve, show_lessons
