"""When work can be done: working hours, waits between coats, and what comes after what.

Moments are whole seconds on the scale of `calc.dates`, in the shop's own time.
"""

from calc.dates import DAY, weekday


class WorkingHours:
    """opens, closes [s] after midnight; days: weekdays worked, Monday is 0."""

    def __init__(self, opens: int, closes: int, days: tuple[int, ...]) -> None:
        self.opens = opens
        self.closes = closes
        self.days = days


class WorkStep:
    """One thing to do.

    work_time [s]. least_wait [s] since the end of the step before. longest_wait [s] since the end of the step
    with the index counts_from, an earlier one; both None where there is none.
    """

    def __init__(
        self, name: str, work_time: int, least_wait: int, longest_wait: int | None, counts_from: int | None
    ) -> None:
        self.name = name
        self.work_time = work_time
        self.least_wait = least_wait
        self.longest_wait = longest_wait
        self.counts_from = counts_from


class Planned:
    """A step with its moments; late: its longest wait was passed."""

    def __init__(self, step: WorkStep, start: int, end: int, late: bool) -> None:
        self.step = step
        self.start = start
        self.end = end
        self.late = late


def next_start(moment: int, work_time: int, hours: WorkingHours) -> int:
    """Return the earliest moment from which a piece of work fits into one working day.

    Args:
        moment [s]: not before this.
        work_time [s]: how long the work takes, at most a working day.
        hours: when work is done.

    Returns:
        [s] moment to start.

    Raises:
        ValueError: the work is longer than a working day, or no day is worked.

    Source: bench-practice, work is begun where it can be ended on the day.
    """
    if not hours.days:
        raise ValueError("at least one day of the week must be worked")
    if not 0 <= hours.opens < hours.closes <= DAY:
        raise ValueError("work must end after it begins, on the same day")
    if work_time > hours.closes - hours.opens:
        raise ValueError("a step takes " + str(work_time) + " s, longer than a working day of "
                         + str(hours.closes - hours.opens) + " s")
    day, clock = divmod(moment, DAY)
    start = max(clock, hours.opens)
    if weekday(day) in hours.days and start + work_time <= hours.closes:
        return day * DAY + start
    day += 1
    while weekday(day) not in hours.days:
        day += 1
    return day * DAY + hours.opens


def plan(steps: tuple[WorkStep, ...], start: int, hours: WorkingHours) -> list[Planned]:
    """Return every step at its earliest moment.

    Args:
        steps: in order.
        start [s]: not before this; the first step's waits do not count.
        hours: when work is done. Waiting goes on day and night.

    Returns:
        one planned step per step.

    Raises:
        ValueError: a step is longer than a working day, or no day is worked.

    Source: bench-practice, a window counts from the film it lies on.
    """
    planned: list[Planned] = []
    for step in steps:
        earliest = planned[-1].end + step.least_wait if planned else start
        begin = next_start(earliest, step.work_time, hours)
        late = False
        if step.longest_wait is not None and step.counts_from is not None:
            late = begin - planned[step.counts_from].end > step.longest_wait
        planned.append(Planned(step, begin, begin + step.work_time, late))
    return planned
