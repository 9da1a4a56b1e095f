"""A page of HTML as a reader meets it, for the tests of what is printed."""

import re
from html.parser import HTMLParser


class Page(HTMLParser):
    """What a reader meets: tags in order, and the text."""

    def __init__(self, html: str) -> None:
        super().__init__()
        self.tags: list[tuple[str, dict[str, str | None]]] = []
        self.text = self.scripts = ""
        self._inside = ""
        self.feed(html)

    def handle_starttag(self, tag: str, attrs: list[tuple[str, str | None]]) -> None:
        self.tags.append((tag, dict(attrs)))
        self._inside = tag if tag == "script" else ""

    def handle_endtag(self, tag: str) -> None:
        self._inside = ""

    def handle_data(self, data: str) -> None:
        if self._inside:
            self.scripts += data
        else:
            self.text += data

    def all(self, tag: str) -> list[dict[str, str | None]]:
        return [attributes for name, attributes in self.tags if name == tag]

    @property
    def levels(self) -> list[int]:
        """The levels of the headings, in order."""
        return [int(tag[1]) for tag, _ in self.tags if re.fullmatch(r"h[1-6]", tag)]
