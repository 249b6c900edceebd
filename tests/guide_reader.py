"""Reads a page of the guide into a small tree, and knows what is wrong with it as HTML."""

from html.parser import HTMLParser

VOID = {"meta", "link", "br", "img", "hr"}


class Node:
    """An element: its tag, attributes, parent, and children, which are nodes or text."""

    def __init__(self, tag, attributes=(), parent=None):
        self.tag, self.attributes, self.parent, self.children = tag, dict(attributes), parent, []

    def all(self, *tags):
        """The elements below with one of these tags, or all elements, in the order of the page."""
        for child in self.children:
            if isinstance(child, Node):
                if not tags or child.tag in tags:
                    yield child
                yield from child.all(*tags)

    def texts(self, without=()):
        """The pieces of text below, but for those in elements with the tags ``without``."""
        for child in self.children:
            if isinstance(child, str):
                yield child
            elif child.tag not in without:
                yield from child.texts(without)

    @property
    def text(self):
        """All text below with single spaces."""
        return " ".join("".join(self.texts()).split())

    @property
    def classes(self):
        return self.attributes.get("class", "").split()

    def within(self, tag):
        """The nearest element around this one with that tag, or None."""
        at = self.parent
        while at is not None and at.tag != tag:
            at = at.parent
        return at


class Page(HTMLParser):
    """A page as read: ``root``; ``wrong``: tags that do not match, [] in a well-formed page; ``source``."""

    def __init__(self, path):
        super().__init__()
        self.path, self.name, self.wrong = path, path.name, []
        self.root = self._at = Node("page")
        self.source = path.read_text(encoding="utf-8")
        self.feed(self.source)
        self.close()
        if self._at is not self.root:
            self.wrong.append((self._at.tag, "is not closed"))

    def handle_starttag(self, tag, attributes):
        names = [name for name, _ in attributes]
        if len(names) != len(set(names)):
            self.wrong.append((tag, "has an attribute twice", self.getpos()))
        node = Node(tag, attributes, self._at)
        self._at.children.append(node)
        if tag not in VOID:
            self._at = node

    def handle_endtag(self, tag):
        if self._at.tag != tag:
            self.wrong.append((tag, "closes another", self.getpos()))
        else:
            self._at = self._at.parent

    def handle_data(self, data):
        self._at.children.append(data)

    @property
    def ids(self):
        return [node.attributes["id"] for node in self.root.all() if "id" in node.attributes]

    @property
    def links(self):
        """Everything that is fetched or followed."""
        return [node.attributes[key] for node in self.root.all() for key in ("href", "src") if key in node.attributes]

    @property
    def commands(self):
        """[(command, refused)] in the order of the page."""
        found = [node for node in self.root.all("pre") if "command" in node.classes]
        return [("".join(node.texts()).strip(), "refused" in node.classes) for node in found]
