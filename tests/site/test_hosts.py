"""What hosts read says the same as our own server: every file gets the headers that it has here."""

import fnmatch
import re
from pathlib import Path

import pytest

from scripts.building import hosts
from scripts.serving import headers

SITE = Path(__file__).parents[2] / "site"
FILES = sorted("/" + path.relative_to(SITE).as_posix() for path in SITE.rglob("*")
               if path.is_file() and path.suffix not in (".br", ".gz") and path.name != ".htaccess")


def rules(text):
    """Return (pattern, headers) of each rule, as a host of folders reads them."""
    read = []
    for block in text.strip().split("\n\n"):
        pattern, *lines = block.splitlines()
        read.append((pattern, [tuple(line.strip().split(": ", 1)) for line in lines]))
    return read


def joined(read, address):
    """Return the headers of an address: those of all patterns that match, same names joined."""
    found = {}
    for pattern, named in read:
        if fnmatch.fnmatchcase(address, pattern):
            for name, value in named:
                found[name] = f"{found[name]}, {value}" if name in found else value
    return found


@pytest.fixture(scope="module")
def folder_rules():
    return rules((SITE / hosts.FOLDERS).read_text("utf-8"))


@pytest.mark.parametrize("address", [*FILES, "/", "/tune/weight/"])
def test_a_host_of_folders_sends_what_our_server_sends(folder_rules, address):
    sent, ours = joined(folder_rules, address), dict(headers.of_address(address))
    assert {name: sent[name] for name, _ in headers.ALWAYS} == dict(headers.ALWAYS)
    # Of several policies in one header each holds (recommendation "Content Security Policy Level 3", 4.2.1:
    # from memory), so that a script's stands beside that of every file.
    assert sent["Content-Security-Policy"].split(", ")[-1] == ours["Content-Security-Policy"]
    if headers.IMMUTABLE.match(address) or address.endswith("/"):
        assert sent["Cache-Control"] == ours["Cache-Control"]
    assert sent.get("Content-Type") == headers.TYPES.get(Path(address).suffix)


def test_few_rules_are_needed(folder_rules):
    """Hosts read about a hundred rules and no more: common practice."""
    assert len(folder_rules) < 40


def test_a_web_server_is_told_the_same():
    text = (SITE / hosts.SERVERS).read_text("utf-8")
    for name, value in headers.ALWAYS:
        assert f'Header always set {name} "{value}"' in text
    assert f"m#^{headers.IMMUTABLE.pattern}#" in text
    for ending, kind in headers.TYPES.items():
        assert f"AddType {kind} {ending}\n" in text


def test_a_site_in_a_folder_says_its_folder():
    folders = hosts.for_folders(["/assets/js-0123456789ab/page.mjs"], "/bench")
    assert {pattern.split("/")[1] for pattern, _ in rules(folders)} == {"bench"}
    assert "/bench/assets/js-0123456789ab/*\n  Cache-Control: max-age=315360000" in folders
    servers = hosts.for_servers("/bench")
    assert "ErrorDocument 404 /bench/404.html" in servers
    assert re.search("m#\\^/bench/assets/", servers)


def test_the_address_tells_the_folder(tmp_path):
    (tmp_path / "index.html").write_text("")
    hosts.write(tmp_path, "https://example.org/bench/")
    assert (tmp_path / hosts.FOLDERS).read_text("utf-8").startswith("/bench/*\n")
