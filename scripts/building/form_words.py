"""Declarations without the words that only a form shows: its page holds them, and no answer speaks them."""

import ast

LEFT_OUT = {"quantity": "help", "count": "help", "date": "help", "choice": "help", "switch": "help",
            "rows": "help", "group": "note"}
"""What each function of `calc.declaring` is told for the form alone, and takes as empty."""

RESULT, BEFORE_HELP = "result", 3
"""What declares a result, and how much it is told before the words for the form."""

EMPTIED = ("purpose", "example")
"""What a calculator must be told, and only its page shows."""

SHEETS = "calc/record/"
"""Where words about an input are spoken: the record tells how a fact comes to be known."""


def without(path: str, source: str) -> str:
    """Return a module's source without the words of its declarations that only a form shows."""
    if path.startswith(SHEETS):
        return source
    return ast.unparse(_Shortened().visit(ast.parse(source)))


class _Shortened(ast.NodeTransformer):
    def visit_Call(self, node: ast.Call) -> ast.Call:
        self.generic_visit(node)
        name = node.func.id if isinstance(node.func, ast.Name) else ""
        if name == RESULT:
            del node.args[BEFORE_HELP:]
        elif name == "Calculator":
            for each in node.keywords:
                if each.arg in EMPTIED:
                    each.value = ast.Constant("")
        else:
            node.keywords = [each for each in node.keywords if each.arg != LEFT_OUT.get(name, "")]
        return node
