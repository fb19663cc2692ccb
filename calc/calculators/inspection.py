"""Inspection: from what was looked at and what was found to shoot, mend or hang up."""

from calc.declaring import (
    COUNT,
    Calculator,
    Group,
    group,
    result,
    switch,
)
from calc.outcome import (
    OK,
    STOP,
    TEXT,
    WATCH,
    Check,
    Column,
    Outcome,
    Sentence,
    Table,
    check,
    link,
    sentence,
)
from calc.tables.findings import (
    LOOK,
    LOOKS,
    MEASURE,
    REPAIR,
    SHOOT,
    UNPICTURED,
    VERDICTS,
    WALL,
    Finding,
    Look,
    Verdict,
    verdict_of,
    verdict_on,
    with_verdict,
)

LEVELS = {WALL: STOP, LOOK: WATCH, REPAIR: WATCH, MEASURE: WATCH, SHOOT: OK}


def compute(**ticked: bool) -> Outcome:
    """Return the verdict on a bow: the most dangerous finding decides."""
    unseen = [each for each in LOOKS if not ticked[each.id]]
    found = [each for verdict in VERDICTS for each in with_verdict(verdict.id) if ticked[each.id]]
    verdict = verdict_of(found, unseen)
    return Outcome(
        headline=_headline(verdict, found, unseen),
        values=(
            ("verdict", verdict.id),
            ("gravest", found[0].label if found else None),
            ("found", len(found)),
            ("unseen", len(unseen)),
        ),
        checks=tuple([_check(each) for each in found]) + _unseen_check(unseen) + _next(verdict),
        tables=(_table(found),) if found else (),
        assumptions=ASSUMPTIONS,
    )


def _headline(verdict: Verdict, found: list[Finding], unseen: list[Look]) -> str:
    deciding = [each.label for each in found if each.verdict == verdict.id]
    if verdict.id == SHOOT:
        return verdict.words
    if deciding:
        return verdict.words + " What decides: " + _listed(deciding) + "."
    return (verdict.words + " " + str(len(unseen)) + " of " + str(len(LOOKS))
            + " looks have not been made.")


def _listed(labels: list[str]) -> str:
    """Return labels as one phrase, the first letter of each small."""
    return "; ".join([label[:1].lower() + label[1:] for label in labels])


def _check(each: Finding) -> Check:
    return check(each.id, LEVELS[each.verdict],
                 sentence(each.label + ". " + each.reason + " See {}.",
                          link(each.page.title, each.page.address)))


def _unseen_check(unseen: list[Look]) -> tuple[Check, ...]:
    if not unseen:
        return (check("looks", OK, "All looks have been made."),)
    return (check("looks", WATCH, "Not looked at: " + _listed([each.label for each in unseen])
                  + ". What was not looked at counts as not known."),)


def _next(verdict: Verdict) -> tuple[Check, ...]:
    if verdict.id == WALL:
        return (check("retire", STOP, sentence("A bow for the wall loses its string. See {}.",
                                               link("Retire a bow", "repair/retire/"))),)
    if verdict.id in (MEASURE, SHOOT):
        return (check("first-draw", WATCH, sentence(
            "Nothing found is not the same as sound. See {}, with nobody in line with the limbs.",
            link("First stringing and first draw", "inspect/first-draw/"))),)
    if verdict.id == LOOK:
        return (check("whom", WATCH, sentence(
            "Until that is settled the bow stays unstrung. How to find somebody who can judge it: {}.",
            link("Somebody experienced", "begin/#somebody-experienced"))),)
    return ()


def _table(found: list[Finding]) -> Table:
    return Table("findings", "What was found, the most dangerous first", (
        Column("finding", "Finding", TEXT), Column("verdict", "Asks for", TEXT),
    ), tuple([(each.label, verdict_on(each).short) for each in found]))


def _groups() -> tuple[Group, ...]:
    looks = group("What has been looked at", *[switch(each.id, each.label, help=each.how) for each in LOOKS],
                  note="Unstrung, both limbs. Tick a look once it is made, whatever it showed.")
    return (looks,) + tuple([
        group(verdict.title,
              *[switch(each.id, each.label, help=each.sign, figure=_figure(each))
                for each in with_verdict(verdict.id)],
              note=verdict.note)
        for verdict in VERDICTS])


def _figure(each: Finding) -> str:
    return "" if each.id in UNPICTURED else each.id


ASSUMPTIONS: tuple[Sentence | str, ...] = (
    "The most dangerous finding decides, however many lesser ones stand beside it.",
    "Common practice at the bench. Nobody publishes limits for old laminated bows, and this knows only "
    "what was ticked.",
    "A bow can be unsound and show nothing: old glue, heat and hidden breaks leave no mark on the outside.",
)

CAUTIONS: tuple[Sentence | str, ...] = (
    "Never string a bow to see if it holds. Look first; in doubt, ask somebody experienced to look.",
    "With a stringer, eye protection on, nobody in line with the limbs; the first full draw from a distance "
    "on a tiller stand.",
    "A bow for the wall gets no string. Cut it off and write on the belly why, so that nobody tries.",
)

CALCULATOR = Calculator(
    id="inspection",
    title="Inspection",
    purpose="Says from what you found whether a bow may be strung, wants mending first, or belongs on the "
            "wall.",
    groups=_groups(),
    results=(
        result("verdict", "Verdict", TEXT, "One of wall, look, repair, measure, shoot."),
        result("gravest", "Gravest finding", TEXT),
        result("found", "Findings", COUNT),
        result("unseen", "Looks not made", COUNT),
    ),
    acted_on=("verdict", "gravest"),
    cautions=CAUTIONS,
    sources=("bench-practice",),
    example="An invented 64 in recurve that has just come in: nothing has been looked at, so nothing is "
            "known.",
    first=tuple([each.id for each in LOOKS]),
    in_steps=True,
    compute=compute,
)
