"""What a browser would read out of a report, for the tests."""

import html.parser


class Page(html.parser.HTMLParser):
    """Texts, tags and attributes of a page.

    Attributes
    ----------
    text
        All text outside the style sheet, pieces joined by single blanks.
    tags
        Every tag that begins, in order.
    attributes
        Every (tag, name, value).
    """

    def __init__(self, content: str) -> None:
        super().__init__()
        self._texts: list[str] = []
        self._skip = False
        self.tags: list[str] = []
        self.attributes: list[tuple[str, str, str]] = []
        self.feed(content)
        self.close()
        self.text = " ".join(" ".join(self._texts).split())

    def handle_starttag(self, tag: str, attrs: list[tuple[str, str | None]]) -> None:
        self.tags.append(tag)
        self.attributes += [(tag, name, value or "") for name, value in attrs]
        self._skip = self._skip or tag == "style"

    def handle_endtag(self, tag: str) -> None:
        self._skip = self._skip and tag != "style"

    def handle_data(self, data: str) -> None:
        if not self._skip:
            self._texts.append(data)
