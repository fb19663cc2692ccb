"""Reading the trees of elements that a record hands to its pages."""


def text_of(node, between=""):
    """Return all text of an element; between: what parts the texts of its children."""
    return node if isinstance(node, str) else between.join(text_of(child, between) for child in node[2:])


def nodes_of(tree, tag):
    """Return the elements of a tag in a tree, none from within another of that tag."""
    found = []
    for node in tree:
        if not isinstance(node, str):
            found += [node] if node[0] == tag else nodes_of(node[2:], tag)
    return found
