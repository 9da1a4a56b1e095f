"""A document of blocks: made of results, rendered for a notebook, for paper, for a terminal.

Text is made last. A block holds what it shows (a picture, a table, findings, a formula, prose);
an `Edition` says for whom it is rendered and in whose English. What a page says only once, where
the rest points to, and which captions are heard rather than seen is decided on blocks.

======================================================  ===========================================
a sentence, prose in markdown, a list, a heading        ``Sentence Prose Listing Heading``
a picture, a table, findings, a formula                 ``Figure TableBlock FindingsBlock Formula``
a figure that a teacher drew                            ``Plot``
blocks under a heading; each shown once in a document   ``Section``, ``shown_once``
whom a block is rendered for                            ``Edition``, ``PAPER``, ``SCREEN``
one English for our words, never for typed ones         ``spelling``
a table or findings as lines for a terminal             ``as_text``, ``findings_text``; ``wrapped``
a whole page from a template                            ``page``, ``file_of``, ``PAPERS``
======================================================  ===========================================
"""

from toolkit.document.blocks import (
    Block,
    FindingsBlock,
    Heading,
    Listing,
    OtherHtml,
    Prose,
    Sentence,
)
from toolkit.document.edition import LANGUAGE, PAPER, SCREEN, SHEET, Edition, Words, spelling
from toolkit.document.findings import findings_html, findings_text
from toolkit.document.shown import Figure, Formula, Plot, TableBlock
from toolkit.document.tables import as_html, as_text, width_or_usual, wrapped
from toolkit.document.whole_page import PAPERS, Section, file_of, page, shown_once
