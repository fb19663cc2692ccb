"""The options of a calculator on the command line."""

import argparse

from calc.declaring import CHOICE, ROWS, Calculator, Input, inputs_of

REPEATED = ("Of an option given more than once, or of a name that a link carries more than once, the first "
            "counts; a note says so.")


def with_attached_values(words: list[str]) -> list[str]:
    """Return the words with each value tied to its option, so that `--own-low -1/8` is a value."""
    tied: list[str] = []
    for word in words:
        negative = word[:1] in ("-", "\u2212") and word[1:2] in "0123456789.,½¼¾⅛⅜⅝⅞" and len(word) > 1
        if negative and tied and tied[-1].startswith("--") and "=" not in tied[-1]:
            tied[-1] += "=" + word
        else:
            tied.append(word)
    return tied


def parser_of(calculator: Calculator) -> argparse.ArgumentParser:
    """Return what reads a calculator's words: its inputs as options, and the options of all."""
    parser = argparse.ArgumentParser(prog=f"python -m calc {calculator.id}", description=calculator.purpose,
                                     epilog=REPEATED, allow_abbrev=False)
    for each in inputs_of(calculator):
        names = ["--" + each.id.replace("_", "-")]
        if "_" in each.id:
            names.append("--" + each.id)
        parser.add_argument(*names, dest=each.id, action="append", metavar="VALUE", help=_help(each))
    parser.add_argument("--link", action="append", metavar="ADDRESS",
                        help="take the figures of a link, such as one that somebody sent; options go before "
                             "its figures, its units are those of bare numbers unless --imperial or --metric "
                             "is given, and what it leaves out keeps the meaning that it had")
    parser.add_argument("--record", metavar="FILE",
                        help="take the inputs from a bow's file; options go before it, and a fact that "
                             "neither tells is refused by its name")
    parser.add_argument("--keep", action="store_true", help="write the answer into that file")
    parser.add_argument("--strict", action="store_true",
                        help="refuse to answer with facts of the worked example; name those missing")
    parser.add_argument("--json", action="store_true", help="one JSON object, numbers in SI")
    parser.add_argument("--save", metavar="FOLDER",
                        help="write the files that come with the result into a folder")
    system = parser.add_mutually_exclusive_group()
    system.add_argument("--imperial", dest="units", action="store_const", const="imperial",
                        help="read bare numbers and show results in imperial units (the default)")
    system.add_argument("--metric", dest="units", action="store_const", const="metric",
                        help="read bare numbers and show results in metric units")
    return parser


def _help(each: Input) -> str:
    text = f"{each.label}. {each.help}".rstrip()
    if each.kind == CHOICE:
        text += " One of: " + ", ".join(option.id for option in each.choices) + "."
    if each.kind == ROWS:
        columns = ", ".join(column.label for column in each.columns)
        text += f" Rows apart by ; and cells by : ({columns})."
    return f"{text} Default: {each.default or 'empty'}".replace("%", "%%")
