"""One table, and one list of findings, as text for a terminal and as HTML for a page.

Nothing is computed here. ``as_text`` and ``as_html`` take a ``Table``, ``findings_text`` and
``findings_html`` take findings. What a finding's level is, words and a shape say; colour only
repeats it.
"""

from toolkit.pages.findings import findings_html, findings_text
from toolkit.pages.tables import as_html, as_text

__all__ = ["as_html", "as_text", "findings_html", "findings_text"]
