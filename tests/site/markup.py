"""Reading HTML in tests."""

from html.parser import HTMLParser

VOID = ("br", "col", "hr", "img", "input", "link", "meta", "source", "wbr")


class Elements(HTMLParser):
    """All elements of a page as (tag, attributes), and the text inside each id."""

    def __init__(self, html):
        super().__init__()
        self.found = []
        self.unclosed = []
        self.feed(html)

    def handle_starttag(self, tag, attrs):
        self.found.append((tag, {name: value or "" for name, value in attrs}))
        if tag not in VOID:
            self.unclosed.append(tag)

    def handle_endtag(self, tag):
        assert self.unclosed.pop() == tag

    def all(self, tag, **wanted):
        """Return the attributes of elements with this tag and these attributes."""
        return [attributes for name, attributes in self.found
                if name == tag and all(attributes.get(key) == value for key, value in wanted.items())]

    def ids(self):
        return [attributes["id"] for _, attributes in self.found if "id" in attributes]
