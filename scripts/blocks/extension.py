"""Python-Markdown extension: a line such as `::: calculator tiller` becomes part of the page.

    ::: calculator ID    the form with the worked example's outcome
    ::: reckoning ID     the same within a chapter, with what stands behind its answer folded
    ::: inputs ID        table of inputs
    ::: results ID       table of results
    ::: example ID       the worked example in words
    ::: sources ID       what the calculator leans on
    ::: table ID         a look-up table
    ::: path ID          a decision path
    ::: answers ID       where a decision path leads, as a list
    ::: glossary PART    the words of one part of the glossary
    ::: cited KEY KEY    the sources that a page leans on, in this order
    ::: program ID       a program of the Python page, with what it prints
    ::: editor           the editor that runs programs
    ::: bows             the record of bows: all that its script fills
    ::: pictures         the pictures that show how a bow came
    ::: marking          what marks points on a picture for the calculator of the page
    ::: target           the sheet of dots, to print
    ::: owner            what a link tells the owner of a bow
    ::: offer            a page for the owner out of a quote
    ::: timer ID ID      what starts the timers of some waits
    ::: recordsheet      the record sheet, blank
    ::: findings         what an inspection can find, and what each finding means
    ::: verdicts         each verdict with its findings in a line
    ::: found NAME NAME  the findings of one verdict, or some findings with their verdicts
    ::: checkvalues      the check values, for the home page
    ::: grits            which grits go where on a bow
    ::: calculators      list of all calculators
    ::: bibliography     list of all sources
    ::: licences         what others wrote, with the licence of each

Within a line, `[[practice ID]]` and its kin become a figure: see `scripts/blocks/figures.py`.
"""

import json
import re
from collections.abc import Callable
from functools import cache
from typing import Any
from xml.etree.ElementTree import Element, SubElement

from markdown import Extension, Markdown
from markdown.blockprocessors import BlockProcessor

from calc import (
    answer,
    catalog,
    declaring,
)
from calc.lookups import catalog as lookups
from calc.paths import catalog as paths
from scripts.blocks import (
    book,
    bows,
    form,
    licences,
    lookup,
    marking,
    owner,
    paper,
    photos,
    programs,
    reference,
    target,
    timer,
)
from scripts.blocks.figures import Figures
from scripts.blocks.tree import Node, element, html_of

BEFORE_CODE_AND_MARKUP = 40
MARK = re.compile(r"^::: *(?P<block>[a-z]+)(?: +(?P<id>[a-z0-9-]+(?: +[a-z0-9-]+)*))? *$")


@cache
def example_outcome(calculator: str) -> dict[str, Any]:
    """Return the answer to a calculator's own defaults.

    Raises:
        ValueError: the example does not compute; the site must not be built without it.
    """
    answer.begin(json.dumps({"calculator": calculator, "pairs": []}))
    while True:
        outcome: dict[str, Any] = json.loads(answer.advance())
        if "progress" not in outcome:
            break
    if outcome["errors"] or outcome["tree"] is None:
        raise ValueError("the example of " + calculator + " does not compute: " + str(outcome["errors"]))
    return outcome


def headline_of(tree: list[Any]) -> list[Node]:
    """Return what the headline of an outcome's tree consists of."""
    return list(tree[0][2][2][2:])


def _calculators_list() -> Node:
    return element(
        "ul", {"class": "rb-calculators"},
        *(element("li", {}, element("a", {"href": id + "/"}, catalog.find(id).title),
                  ". " + catalog.find(id).purpose)
          for id in catalog.IDS),
    )


ABOUT_ONE: dict[str, Callable[[declaring.Calculator], Node]] = {
    "calculator": lambda one: form.calculator_section(one, example_outcome(one.id)),
    "reckoning": lambda one: form.calculator_section(one, example_outcome(one.id), in_chapter=True),
    "inputs": reference.inputs_table,
    "results": reference.results_table,
    "example": lambda one: reference.example(one, headline_of(example_outcome(one.id)["tree"])),
    "sources": reference.sources_list,
}
OF_THE_BOOK: dict[str, Callable[[str], Node]] = {
    "table": lambda name: lookup.lookup_section(lookups.find(name)),
    "path": lambda name: book.path_section(paths.find(name)),
    "answers": lambda name: book.answers_list(paths.find(name)),
    "glossary": book.glossary_list,
    "found": lambda names: book.found(names.split()),
    "program": programs.program,
    "timer": timer.section,
    "cited": lambda keys: reference.cited_list(keys.split()),
}
ABOUT_ALL: dict[str, Callable[[], Node]] = {
    "editor": programs.editor,
    "bows": bows.section,
    "owner": owner.section,
    "offer": owner.offer,
    "pictures": photos.prompts,
    "recordsheet": paper.record_sheet,
    "marking": marking.section,
    "target": target.sheet,
    "findings": book.findings_list,
    "verdicts": book.verdicts_list,
    "checkvalues": book.check_values_table,
    "grits": book.grit_uses_table,
    "calculators": _calculators_list,
    "bibliography": reference.bibliography_list,
    "licences": licences.section,
}


def block_html(block: str, id: str | None) -> str:
    """Return the HTML of one block.

    Raises:
        ValueError: there is no such block, or nothing of that name.
    """
    if block in OF_THE_BOOK and id:
        return html_of(OF_THE_BOOK[block](id))
    if block in ABOUT_ONE and id:
        return html_of(ABOUT_ONE[block](catalog.find(id)))
    if block in ABOUT_ALL and not id:
        return html_of(ABOUT_ALL[block]())
    raise ValueError("no block is written ::: " + block + " " + (id or ""))


class DeclarationBlocks(BlockProcessor):
    """Puts the HTML of a block in the place of its line."""

    def test(self, parent: Element, block: str) -> bool:  # noqa: ARG002 (the library's signature)
        return MARK.match(block) is not None

    def run(self, parent: Element, blocks: list[str]) -> None:
        found = MARK.match(blocks.pop(0))
        assert found
        html = block_html(found["block"], found["id"])
        SubElement(parent, "p").text = self.parser.md.htmlStash.store(html)


class DeclarationExtension(Extension):
    """Registers the blocks."""

    def extendMarkdown(self, md: Markdown) -> None:  # noqa: N802 (the library's name)
        md.parser.blockprocessors.register(DeclarationBlocks(md.parser), "declarations", 100)
        md.preprocessors.register(Figures(md), "figures", BEFORE_CODE_AND_MARKUP)


def makeExtension(**options: Any) -> DeclarationExtension:  # noqa: N802 (the library's name)
    """Return the extension, as Python-Markdown asks for it."""
    return DeclarationExtension(**options)
