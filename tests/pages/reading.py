"""Reading a calculator's page as its reader sees it."""

import re

from playwright.sync_api import Page, expect

FIELD = '.rb-field[data-field="{}"]'


def box(page: Page, field: str):
    """Return the control of a field."""
    return page.locator(FIELD.format(field)).locator("input, select").first


def problem(page: Page, field: str):
    """Return the place beside a field that says what is wrong with it."""
    return page.locator(FIELD.format(field)).locator(".rb-error")


def type_into(page: Page, field: str, text: str) -> None:
    """Replace the text of a field, key by key as a reader would, and go on to the next field."""
    control = box(page, field)
    control.fill("")
    control.press_sequentially(text)
    control.blur()


def result(page: Page, id: str) -> str:
    return page.locator(f'[data-result="{id}"] dd').inner_text()


def headline(page: Page):
    return page.locator(".rb-headline")


def wait_for_state(page: Page, state: str) -> None:
    expect(page.locator(".rb-outcome")).to_have_attribute("data-state", state)


def wait_for_link(page: Page, part: str) -> None:
    """Wait until the address holds what was typed; it follows with a short delay."""
    expect(page).to_have_url(re.compile(re.escape(part)))
