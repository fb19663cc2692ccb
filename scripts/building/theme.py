"""What the theme brings and nobody here uses stays out; what it does at once comes in pieces, or later."""

import re
import shutil
from pathlib import Path

from scripts.building import maps, search
from scripts.building.errors import BuildError

UNUSED = ("assets/javascripts/lunr", "assets/javascripts/workers", "assets/**/*.map")
"""Word lists for searching in other languages; its search, for which we have our own; maps for debugging."""
SCRIPT = "assets/javascripts/bundle.*.js"
NAME = r"[\w$]+"
MOUNTS = re.compile(
    rf'({NAME})=({NAME})\((\.\.\.{NAME}\("consent"\)\.map\(.*?)\),({NAME})=({NAME})\(\(\)=>\2\('
    rf'(?=\.\.\.{NAME}\("announce"\)\.map\(.*?,{NAME}=({NAME})\.pipe\(({NAME})\(\(\)=>\4\),{NAME}\(\1\),)')
"""Where its script puts together what works on a page: search and colours, then header, sidebars, text."""
IN_TURN = (r"inTurn=document.currentScript.dataset.apart===undefined?(atOnce,...parts)=>\2(...parts):"
           r"(atOnce,...parts)=>\2(...parts.map((_,i)=>i).filter(i=>i%atOnce===0).map(i=>"
           r"\5(()=>new Promise(done=>setTimeout(done))).pipe(\7(()=>\2(...parts.slice(i,i+atOnce)))))),"
           r"\1=inTurn(1,\5(()=>\2(\3))),\4=\5(()=>inTurn(1,")
"""The same, a part a task where the page has asked for that: a tap may come between."""
TEXT = re.compile(rf'return {NAME}\((?=\.\.\.{NAME}\("\.annotate:not)')
TEXT_IN_TURN = "return inTurn(10,"
"""What works on links, folds and code in a text, some of them a task."""
WORDS = re.compile(
    rf'{NAME}\({NAME}\(location\.protocol!=="file:"\),({NAME}\("search"\))\)(\.pipe\({NAME}\({NAME}=>{NAME}\),'
    rf'({NAME})\(\(\)=>.*?{NAME}\(\[)({NAME}),'
    rf'({NAME}\.pipe\({NAME}\({NAME}\(\)\),{NAME}\({NAME}=>!!{NAME}\.searchParams\.get\("h"\)\)\))')
"""Where it fetches all words of the book: for the search, and to mark those that led a reader to a page."""
WORDS_ASKED_FOR = r"\1\2\5.pipe(\3(()=>\4)),\5"
"""The same, but not before somebody goes to the search or comes from it."""
FETCH = re.compile(rf'{NAME}\(new URL\("{re.escape(search.THEME_INDEX)}",({NAME}\.base)\)\)')
FETCH_AT_LAST = (rf'((ask=()=>fetch(new URL("{search.INDEX}",\1))'
                 r'.then(got=>got.ok?got.json():Promise.reject())'
                 r'.catch(()=>new Promise(done=>setTimeout(done,2e3)).then(ask)))=>'
                 r'({then:(...what)=>ask().then(...what)}))()')
"""How it fetches them: asked for again until they come, so that a search goes on once a signal is back."""
CHANGES = ((MOUNTS, IN_TURN), (TEXT, TEXT_IN_TURN), (WORDS, WORDS_ASKED_FOR), (FETCH, FETCH_AT_LAST))


def trim(site: Path) -> None:
    """Remove the unused parts from a built site."""
    for pattern in UNUSED:
        for path in list(site.glob(pattern)):
            if path.is_dir():
                shutil.rmtree(path)
            else:
                path.unlink()
    maps.forget(site)


def part(site: Path) -> None:
    """Let the theme's script begin its work on a page in parts, and fetch what is searched once it is."""
    [path] = site.glob(SCRIPT)
    script = path.read_text(encoding="utf-8")
    for whole, changed in CHANGES:
        script, times = whole.subn(changed, script)
        if times != 1:
            raise BuildError("the theme's script begins its work or its search in another way than it did")
    path.write_text(script, encoding="utf-8")
