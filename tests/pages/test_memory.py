"""The last job is offered, never imposed."""

from playwright.sync_api import expect

from tests.pages.reading import box, headline, type_into, wait_for_link, wait_for_state


def test_the_last_job_can_be_taken_up_again(visitor):
    page = visitor.open_calculator()
    type_into(page, "upper", "7 1/2")
    wait_for_state(page, "current")
    wait_for_link(page, "upper=7+1/2")
    said = headline(page).inner_text()
    visitor.open()
    page = visitor.open_calculator()
    assert box(page, "upper").input_value() == box(page, "upper").get_attribute("value")
    expect(page.locator(".rb-kept li")).to_contain_text(said)
    page.get_by_role("button", name="Take up").click()
    expect(box(page, "upper")).to_have_value("7 1/2")
    expect(headline(page)).to_have_text(said)


def test_a_link_wins_over_memory(visitor):
    page = visitor.open_calculator()
    type_into(page, "upper", "7 1/2")
    wait_for_link(page, "upper=7+1/2")
    visitor.open()
    page = visitor.open_calculator("#upper=6+in")
    expect(box(page, "upper")).to_have_value("6 in")


def test_start_again_brings_back_the_example(visitor):
    page = visitor.open_calculator()
    example = headline(page).inner_text()
    type_into(page, "upper", "8 in")
    wait_for_state(page, "current")
    page.get_by_role("button", name="Start again").click()
    expect(headline(page)).to_have_text(example)
    assert box(page, "upper").input_value() == box(page, "upper").get_attribute("value")
    page.get_by_role("button", name="Undo").click()
    expect(box(page, "upper")).to_have_value("8 in")
    wait_for_link(page, "upper=8+in")


def test_a_reload_keeps_what_was_typed(visitor):
    page = visitor.open_calculator()
    type_into(page, "upper", "7 7/8")
    wait_for_link(page, "upper=7+7/8")
    page.reload()
    expect(box(page, "upper")).to_have_value("7 7/8")
    wait_for_state(page, "current")


def test_works_where_storage_is_refused(visitor):
    visitor.context.add_init_script(
        "Object.defineProperty(window, 'localStorage', {get() { throw new DOMException('refused') }})")
    visitor.complaints.clear()
    page = visitor.open_calculator("#upper=7+in")
    expect(headline(page)).to_be_visible()
    visitor.complaints.clear()  # the theme itself complains about refused storage


KEPT = "JSON.parse(localStorage.getItem('rebrace.jobs-1.tiller') ?? '[]')"


def links(page) -> list[str]:
    return [job["link"] for job in page.evaluate(KEPT)]


def job_of(page, text: str) -> None:
    """Type one figure into the example, and wait until it is kept."""
    type_into(page, "upper", text)
    wait_for_link(page, "upper=" + text.replace(" ", "+"))
    wait_for_state(page, "current")


def test_the_last_five_jobs_are_kept_each_with_moment_and_headline(visitor):
    for eighths in range(1, 7):
        page = visitor.open_calculator()
        job_of(page, f"7 {eighths}/16")
        visitor.open("calculators/")
    page = visitor.open_calculator()
    jobs = page.evaluate(KEPT)
    assert [job["link"].split("&")[0] for job in jobs] == [f"#upper=7+{n}/16" for n in (6, 5, 4, 3, 2)]
    assert all(job["moment"] and job["headline"] for job in jobs)
    assert page.locator(".rb-kept li").count() == 5


def test_a_second_tab_adds_and_never_overwrites(visitor):
    first = visitor.open_calculator()
    job_of(first, "7 1/2")
    second = visitor.context.new_page()
    second.goto(first.url)
    second.locator(".rb-outcome[data-state=current]").wait_for()
    job_of(second, "7 5/8")
    job_of(first, "7 3/4")
    assert [link.split("&")[0] for link in links(first)] == ["#upper=7+3/4", "#upper=7+5/8"]


def test_figures_that_cannot_be_answered_are_not_kept(visitor):
    page = visitor.open_calculator()
    type_into(page, "upper", "abc")
    wait_for_state(page, "stale")
    wait_for_link(page, "upper=abc")
    page.get_by_role("radio", name="Metric").check()
    assert links(page) == []


def test_the_job_that_an_earlier_release_kept_is_taken_over(visitor):
    page = visitor.open()
    page.evaluate("localStorage.setItem('rebrace.job.tiller', '#upper=7+1/2&lower=7+in&units=imperial')")
    page = visitor.open_calculator()
    page.get_by_role("button", name="Take up an earlier trial").click()
    expect(box(page, "upper")).to_have_value("7 1/2")
    assert page.evaluate("localStorage.getItem('rebrace.job.tiller')") is None


def test_a_removed_row_comes_back(visitor):
    page = visitor.open_calculator(id="draw-curve")
    rows = page.locator('[data-field="readings"] tbody tr')
    count = rows.count()
    said = rows.nth(1).locator("input").first.input_value()
    rows.nth(1).get_by_role("button").click()
    expect(rows).to_have_count(count - 1)
    page.get_by_role("button", name="Undo").click()
    expect(rows).to_have_count(count)
    assert rows.nth(1).locator("input").first.input_value() == said
