"""Every test of the book that asks for `page` runs once a page."""

from tests.book import pages


def pytest_generate_tests(metafunc):
    if "page" in metafunc.fixturenames:
        metafunc.parametrize("page", pages.all_pages(), ids=lambda page: page.name)
