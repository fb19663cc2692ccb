"""What the book shows from its own data: decision paths, findings, the glossary, check values, grits."""

from calc.lookups import glossary
from calc.lookups.check_values import CHECK_VALUES
from calc.paths.declare import Answer, End, Path, Question, nodes, trail
from calc.report import TO_ROOT
from calc.tables.findings import VERDICTS, Finding, Page, find, verdict_on, with_verdict
from calc.tables.grits import USES
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
            _listed_as(each), element("p", {}, "Go on at ", _page_link(each.page), ".")]


def _listed_as(each: End) -> Node | None:
    """Return which finding of the inspection an end stands for, and where it is explained."""
    if not each.finding:
        return None
    finding = find(each.finding)
    return element("p", {}, "In the inspection\N{RIGHT SINGLE QUOTATION MARK}s list: ", element(
        "a", {"href": TO_ROOT + "inspect/decide/#" + _finding_anchor(finding)}, finding.label), ".")


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


def _page_link(page: Page, to_root: str = TO_ROOT) -> Node:
    return element("a", {"href": to_root + page.address}, page.title)


def _anchor(path: Path, id: str) -> str:
    return path.id + "-" + id


def answers_list(path: Path) -> Node:
    """Return where a path leads, under its first answers, for an overview one folder below the root."""
    first, *_ = path.questions
    ends = [(trail(path, each.id), each) for each in path.ends]
    return element("ul", {"class": "rb-reached"}, *(
        element("li", {}, given.text, *_reached([(steps, each) for steps, each in ends
                                                 if steps[0][1] == given]))
        for given in first.answers))


def _reached(ends: list[tuple[list[tuple[Question, Answer]], End]]) -> list[Node]:
    if len(ends) == 1:
        return [": ", _page_link(ends[0][1].page, "../")]
    return [element("ul", {}, *(
        element("li", {}, "; ".join(given.text for _, given in steps[1:]), ": ", _page_link(each.page, "../"))
        for steps, each in ends))]


def findings_list() -> Node:
    """Return every finding of an inspection under its verdict, with sign, reason and page."""
    return element("div", {"class": "rb-findings"}, *(
        part for verdict in VERDICTS for part in (
            element("h3", {"id": "findings-" + verdict.id}, verdict.title),
            element("p", {}, verdict.note),
            element("dl", {}, *(
                part for each in with_verdict(verdict.id) for part in (
                    element("dt", {"id": _finding_anchor(each)}, each.label),
                    element("dd", {}, each.sign + " ", element("strong", {}, each.reason), " See ",
                            _page_link(each.page), ".")))))))


def _finding_anchor(finding: Finding) -> str:
    return "finding-" + str(finding.id).replace("_", "-")


def verdicts_list() -> Node:
    """Return each verdict with its findings in a line."""
    return element("ul", {"class": "rb-findings"}, *(
        element("li", {}, element("strong", {}, verdict.short + ":"), " ",
                "; ".join(_inside(each.label) for each in with_verdict(verdict.id)) + ".")
        for verdict in VERDICTS))


def _inside(label: str) -> str:
    """Return a label as it stands inside a sentence."""
    return label[:1].lower() + label[1:]


def found(names: list[str]) -> Node:
    """Return the findings of one verdict as a list, or some findings by name as a table with their verdicts.

    Raises:
        ValueError: there is no such verdict or finding.
    """
    if names[0] in [verdict.id for verdict in VERDICTS]:
        [verdict] = names
        return element("ul", {"class": "rb-findings"},
                       *(element("li", {}, each.label) for each in with_verdict(verdict)))
    return element("div", {"class": "rb-findings"}, element(
        "table", {},
        element("thead", {}, element("tr", {}, *(element("th", {"scope": "col"}, head)
                                                 for head in ("Finding", "How to tell it", "Verdict")))),
        element("tbody", {}, *(
            element("tr", {}, element("td", {}, each.label), element("td", {}, each.sign),
                    element("td", {}, element("strong", {}, verdict_on(each).short)))
            for each in (find(name.replace("-", "_")) for name in names)))))


def glossary_list(part: str) -> Node:
    """Return the words of one part of the glossary, each with its anchor."""
    return element("dl", {"class": "rb-glossary"}, *(
        node for each in glossary.find_part(part).terms for node in (
            element("dt", {"id": each.id}, each.name),
            element("dd", {}, each.text, *_said_elsewhere(each), *_explained(each)))))


def _said_elsewhere(term: glossary.Term) -> list[Node]:
    others = [other for name, words in glossary.OTHER_WORDS if name == term.name for other in words]
    return [" Elsewhere: " + ", ".join(others) + "."] if others else []


def _explained(term: glossary.Term) -> list[Node]:
    """Return a link from the glossary, one folder below the root, to the page that says more."""
    return [part for id, address, what in glossary.EXPLAINED if id == term.id
            for part in (" ", element("a", {"href": "../" + address}, what), ".")]


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


def grit_uses_table() -> Node:
    """Return which grits go where, as the page on sanding shows them."""
    return element(
        "table", {},
        element("thead", {}, element("tr", {}, *(element("th", {"scope": "col"}, head)
                                                 for head in ("For", "Grits")))),
        element("tbody", {}, *(
            element("tr", {}, element("td", {}, each.work),
                    element("td", {}, element("strong", {}, each.grades) if each.id == "sealer"
                            else each.grades))
            for each in USES)),
    )
