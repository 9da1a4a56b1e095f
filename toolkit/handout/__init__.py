"""The handout: one self-contained HTML file of a student's own numbers, to print."""

from toolkit.handout.page import handout, printed
