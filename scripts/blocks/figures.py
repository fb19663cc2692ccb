"""Figures that a page takes from where they are kept, so that nobody types them twice.

    [[practice ID]]                 a limit of `calc.tables.practice`: 1/8 to 1/4 in
    [[practice ID metric]]          the same in metric units
    [[practice ID number]]          the same without its unit: 1/8 to 1/4
    [[example CALCULATOR INPUT]]    what the worked example starts from: 53 lb
    [[result CALCULATOR RESULT]]    what the worked example comes to
"""

import re
from collections.abc import Callable
from functools import cache

from markdown.preprocessors import Preprocessor

from calc import (
    answer,
    catalog,
    declaring,
    quantities,
)
from calc.lookups.check_values import figure
from calc.report import declared_values
from calc.tables import practice

REFERENCE = re.compile(r"\[\[(?P<place>practice|example|result)(?P<names>[a-z0-9_ -]*)\]\]")

CLOSE = 0.02
"""A figure as shown is this close to the one that is kept: 3.2 mm is 1/8 in."""

NUMBER = "number"
"""Asks for a figure without its unit, where the sentence says the unit in words."""


def filled(text: str) -> str:
    """Return a page's Markdown with its references replaced by their figures.

    Raises:
        ValueError: what a reference names does not exist.
    """
    return REFERENCE.sub(lambda found: _figure(found["place"], found["names"].split()), text)


def _figure(place: str, names: list[str]) -> str:
    figure_of: dict[str, Callable[..., str]] = {"practice": _practice, "example": _example, "result": _result}
    try:
        return figure_of[place](*names)
    except (TypeError, ValueError) as error:
        raise ValueError(f"no figure is written [[{place} {' '.join(names)}]]: {error}") from error


def _practice(id: str, system: str = "imperial") -> str:
    limit = practice.find(id)
    shown_in = "imperial" if system == NUMBER else system
    for end in (limit.low, limit.high):
        shown = quantities.show(end, limit.kind, shown_in) if end else "0"
        if end and abs(quantities.parse(shown, limit.kind) / end - 1) > CLOSE:
            raise ValueError("its figure is too small for the marks that are shown; type it into the page")
    text = figure(limit.kind, limit.low, limit.high, shown_in)
    return text.rpartition(" ")[0] if system == NUMBER else text


def _example(calculator: str, name: str) -> str:
    defaults = {each.id: each.default for each in declaring.inputs_of(catalog.find(calculator))}
    if not defaults.get(name):
        raise ValueError(f"{calculator} has no input called {name} with a figure in its example")
    return str(defaults[name])


def _result(calculator: str, name: str) -> str:
    for declared, value in _results(calculator):
        if declared.id == name and value is not None:
            return value if isinstance(value, str) else quantities.show(value, declared.kind)
    raise ValueError(f"{calculator} has no result called {name} in its example")


@cache
def _results(calculator: str) -> list[tuple[declaring.Result, float | str | None]]:
    """Return every result of a worked example."""
    job = answer.work_out(catalog.find(calculator), [])
    if job.outcome is None:
        raise ValueError("the example of " + calculator + " does not compute: " + str(job.problems))
    return declared_values(job.calculator, job.outcome)


class Figures(Preprocessor):
    """Puts figures in before the page is read as Markdown."""

    def run(self, lines: list[str]) -> list[str]:
        return filled("\n".join(lines)).split("\n")
