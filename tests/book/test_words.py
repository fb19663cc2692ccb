"""Spelling, reading level, the terms of the trade, and no names of makers or people."""

import re
import subprocess
import sys
from importlib.resources import files

import pytest
import textstat
from spellchecker import SpellChecker

from calc.lookups import glossary
from tests.book.pages import DOCS, SENTENCES, prose, words_file

HARDEST = 8.0
"""Most of the automated readability index: a reader of about thirteen follows it."""
FEWEST_WORDS = 80
"""Below this an index of readability says nothing."""

APOSTROPHE = "\N{RIGHT SINGLE QUOTATION MARK}"
WORD = re.compile(r"(?<![A-Za-z0-9])[A-Za-z][a-z]+(?:'(?!s\b)[a-z]+)?")
NAME = re.compile(r"(?<=[a-z,;] )([A-Z][A-Za-z-]+)")
MARKS_OF_TRADE = "™®©℠"
RIGHT = "stings,gere"
"""Words that are meant where the library thinks of another."""
VARIANTS = {
    "dryfire": "dry fire",
    "fade out": "fadeout",
    "fade-out": "fadeout",
    "fiberglass": "glass",
    "fibreglass": "glass",
    "fistmele": "brace height",
    "handle section": "riser",
    "nock groove": "string groove",
    "poundage": "draw weight",
    "string height": "brace height",
    "string nock": "string groove",
    "super glue": "cyanoacrylate",
    "superglue": "cyanoacrylate",
    "tip wedge": "tip overlay",
}
"""Other words for what the glossary has a word for."""


@pytest.fixture(scope="module")
def dictionary():
    checker = SpellChecker()
    forms = [form for each in glossary.terms() for form in (each.name, *each.seen_as)]
    own = " ".join(words_file("words.txt") + words_file("names.txt") + forms)
    checker.word_frequency.load_words(words_of(own))
    return checker


@pytest.fixture(scope="module")
def american():
    """Return American spellings with their British ones."""
    file = files("codespell_lib") / "data" / "dictionary_en-GB_to_en-US.txt"
    pairs = [line.split("->") for line in file.read_text("utf-8").splitlines() if "->" in line]
    either = set(words_file("either-spelling.txt"))
    return {right.rstrip(","): left for left, right in pairs if right.rstrip(",") not in either}


def words_of(text):
    return [word.lower() for word in WORD.findall(text.replace(APOSTROPHE, "'"))]


def test_every_word_is_in_the_dictionary_or_in_the_books_own_list(page, dictionary):
    said = {word for each in page.blocks if each.section != "Sources" for word in words_of(each.text)}
    unknown = dictionary.unknown(said)
    assert not unknown, f"misspelt, or missing in tests/book/words.txt: {sorted(unknown)}"


@pytest.mark.parametrize("name", ["words.txt", "names.txt"])
def test_the_books_own_words_are_used(name):
    text = " ".join(path.read_text("utf-8") for path in DOCS.rglob("*.md"))
    assert not [word for word in words_file(name) if not re.search(rf"\b{word}", text, re.IGNORECASE)]


def test_no_common_misspelling():
    texts = [*DOCS.rglob("*.md"), *(DOCS.parent / "calc").rglob("*.py")]
    command = [sys.executable, "-m", "codespell_lib", "--builtin", "clear,rare", "--ignore-words-list", RIGHT]
    found = subprocess.run([*command, *map(str, texts)], capture_output=True, text=True, check=False)
    assert found.returncode == 0, found.stdout


def test_spelling_is_british_throughout(page, american):
    found = {word: american[word] for each in page.blocks for word in words_of(each.text) if word in american}
    assert not found


def test_a_page_is_easy_to_read(page):
    sentences = [each.text if each.text[-1] in ".!?:" else each.text + "." for each in prose(page)]
    letters = re.sub(r"[^A-Za-z.,:;?!' -]+", " ", " ".join(sentences).replace(APOSTROPHE, "'"))
    if len(letters.split()) >= FEWEST_WORDS:
        assert textstat.automated_readability_index(letters) <= HARDEST


def test_a_field_term_in_use_is_in_the_glossary(page):
    known = {form.lower() for each in glossary.terms() for form in (each.name, *each.seen_as)}
    text = " ".join(each.text for each in prose(page)).lower()
    missing = [term for term in words_file("terms.txt")
               if term not in known and re.search(rf"\b{re.escape(term)}s?\b", text)]
    assert not missing, f"without an entry in the glossary: {missing}"


def test_one_thing_has_one_name(page):
    text = " ".join(each.text for each in page.blocks).lower()
    found = {variant: term for variant, term in VARIANTS.items() if re.search(rf"\b{variant}\b", text)}
    assert not found


def test_no_trade_mark_sign(page):
    assert not [mark for mark in MARKS_OF_TRADE if mark in page.source]


def test_no_names_of_makers_or_people(page):
    """A capital inside a sentence is a name; those allowed are in a list. Sources may name authors."""
    allowed = set(words_file("names.txt")) | {each.name.split()[0] for each in glossary.terms()}
    titles = {word for each in page.blocks for word in each.text.split()[:1]}
    own = [each for each in page.blocks if each.tag in (*SENTENCES, "td") and each.section != "Sources"]
    names = {name for each in own for name in NAME.findall(each.text)}
    assert not names - allowed - titles - linked_words(page)


def linked_words(page):
    """Return the words of the page's links: titles of other pages keep their capital."""
    texts = re.findall(r"\[([^\]]+)\]\(", page.source)
    return {word for text in texts for word in re.findall(r"[\w-]+", text)}
