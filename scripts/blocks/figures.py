"""Figures that a page takes from where they are kept, so that nobody types them twice.

    [[practice ID]]                 a limit of `calc.tables.practice`: 1/8 to 1/4 in
    [[practice ID metric]]          the same in metric units
    [[example CALCULATOR INPUT]]    what the worked example starts from: 53 lb
    [[result CALCULATOR RESULT]]    what the worked example comes to
"""

import re
from collections.abc import Callable
from functools import cache

from markdown.preprocessors import Preprocessor

from calc import answer, catalog, fields, quantities
from calc.lookups.check_values import figure
from calc.report import declared_values
from calc.tables import practice

REFERENCE = re.compile(r"\[\[(?P<place>practice|example|result)(?P<names>[a-z0-9_ -]*)\]\]")


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
    return figure(limit.kind, limit.low, limit.high, system)


def _example(calculator: str, name: str) -> str:
    defaults = {each.id: each.default for each in fields.inputs_of(catalog.find(calculator))}
    if not defaults.get(name):
        raise ValueError(f"{calculator} has no input called {name} with a figure in its example")
    return str(defaults[name])


def _result(calculator: str, name: str) -> str:
    for declared, value in _results(calculator):
        if declared.id == name and value is not None:
            return value if isinstance(value, str) else quantities.show(value, declared.kind)
    raise ValueError(f"{calculator} has no result called {name} in its example")


@cache
def _results(calculator: str) -> list[tuple[fields.Result, float | str | None]]:
    """Return every result of a worked example."""
    job = answer.work_out(catalog.find(calculator), [])
    if job.outcome is None:
        raise ValueError("the example of " + calculator + " does not compute: " + str(job.problems))
    return declared_values(job.calculator, job.outcome)


class Figures(Preprocessor):
    """Puts figures in before the page is read as Markdown."""

    def run(self, lines: list[str]) -> list[str]:
        return filled("\n".join(lines)).split("\n")
