"""What the book shows from its own data: decision paths, findings, the glossary, the check values at home."""

from calc.lookups import glossary
from calc.lookups.check_values import CHECK_VALUES
from calc.paths.declare import End, Page, Path, Question, nodes, trail
from calc.report import TO_ROOT
from calc.tables.findings import VERDICTS, with_verdict
from scripts.blocks.tree import Node, element


def path_section(path: Path) -> Node:
    """Return a decision path: every question and every end, tied together by links.

    It can be read and followed as it stands; the page's script shows one step at a time.
    """
    return element("section", {"class": "rb-path", "data-path": path.id, "aria-label": path.title},
                   *(_step(path, each) for each in nodes(path)))


def _step(path: Path, each: Question | End) -> Node:
    parts = _end(each) if isinstance(each, End) else _question(path, each)
    return element("section", {"class": "rb-step", "id": _anchor(path, each.id)},
                   _way(path, each.id), *parts, _start_again(path, each.id))


def _question(path: Path, each: Question) -> list[Node | None]:
    return [
        element("h3", {"tabindex": "-1"}, each.text),
        element("p", {}, each.help) if each.help else None,
        element("ul", {"class": "rb-answers"}, *(
            element("li", {}, element("a", {"href": "#" + _anchor(path, given.to)}, given.text))
            for given in each.answers)),
    ]


def _end(each: End) -> list[Node | None]:
    return [element("h3", {"tabindex": "-1"}, each.verdict), element("p", {}, each.reason),
            element("p", {}, "Go on at ", _page_link(each.page), ".")]


def _start_again(path: Path, id: str) -> Node | None:
    first = path.questions[0].id
    if id == first:
        return None
    return element("p", {"class": "rb-again"},
                   element("a", {"href": "#" + _anchor(path, first)}, "Start again"))


def _way(path: Path, id: str) -> Node | None:
    """Return the questions with the answers that led here, each question a way back."""
    steps = trail(path, id)
    if not steps:
        return None
    return element("ol", {"class": "rb-way", "aria-label": "Your answers so far"}, *(
        element("li", {}, element("a", {"href": "#" + _anchor(path, asked.id)}, asked.text),
                " ", element("strong", {}, given.text))
        for asked, given in steps))


def _page_link(page: Page) -> Node:
    return element("a", {"href": TO_ROOT + page.address}, page.title)


def _anchor(path: Path, id: str) -> str:
    return path.id + "-" + id


def findings_list() -> Node:
    """Return every finding of an inspection under its verdict, with sign, reason and page."""
    return element("div", {"class": "rb-findings"}, *(
        part for verdict in VERDICTS for part in (
            element("h3", {"id": "findings-" + verdict.id}, verdict.title),
            element("p", {}, verdict.note),
            element("dl", {}, *(
                part for each in with_verdict(verdict.id) for part in (
                    element("dt", {"id": "finding-" + each.id.replace("_", "-")}, each.label),
                    element("dd", {}, each.sign + " ", element("strong", {}, each.reason), " See ",
                            _page_link(each.page), ".")))))))


def glossary_list(part: str) -> Node:
    """Return the words of one part of the glossary, each with its anchor."""
    return element("dl", {"class": "rb-glossary"}, *(
        node for each in glossary.find_part(part).terms for node in (
            element("dt", {"id": each.id}, each.name), element("dd", {}, each.text))))


def check_values_table() -> Node:
    """Return the check values as the home page shows them."""
    return element(
        "table", {},
        element("thead", {}, element("tr", {}, *(element("th", {"scope": "col"}, head)
                                                 for head in ("Question", "Value", "Standing")))),
        element("tbody", {}, *(
            element("tr", {}, element("td", {}, element("a", {"href": each.address}, each.question)),
                    element("td", {}, each.value), element("td", {}, each.status))
            for each in CHECK_VALUES)),
    )
