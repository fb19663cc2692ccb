"""When work can be done: working hours, waits between coats, and what comes after what.

Moments are whole seconds on the scale of `calc.dates`, in the shop's own time.
"""

from calc.dates import DAY, weekday
from calc.shop.curing import moment_after


class WorkingHours:
    """opens, closes [s] after midnight; days: weekdays worked, Monday is 0.

    other: (number of a day, opens, closes) of days with hours of their own; both alike: closed all day. The
    last one of a day counts.
    """

    def __init__(
        self, opens: int, closes: int, days: tuple[int, ...], other: tuple[tuple[int, int, int], ...] = ()
    ) -> None:
        self.opens = opens
        self.closes = closes
        self.days = days
        self.other = {day: (first, last) for day, first, last in other}

    def on(self, day: int) -> tuple[int, int]:
        """Return from when to when a day is worked.

        Args:
            day: its number, as `calc.dates` counts.

        Returns:
            [s] after midnight, begin and end; both alike where it is not worked.

        Source: bench-practice, a day's own hours stand in for those of its weekday.
        """
        if day in self.other:
            return self.other[day]
        return (self.opens, self.closes) if weekday(day) in self.days else (0, 0)


class WorkStep:
    """One thing to do.

    work_time [s]. least_wait [s] since the end of the step before. longest_wait [s] since the end of the step
    with the index counts_from, an earlier one; both None where there is none. done: its start and end [s],
    where it has been done.
    """

    def __init__(
        self, name: str, work_time: int, least_wait: int, longest_wait: int | None, counts_from: int | None,
        done: tuple[int, int] | None = None,
    ) -> None:
        self.name = name
        self.work_time = work_time
        self.least_wait = least_wait
        self.longest_wait = longest_wait
        self.counts_from = counts_from
        self.done = done


class Planned:
    """A step with its moments.

    opens, closes: between which it may begin, by its waits; closes is None where there is no end.
    """

    def __init__(self, step: WorkStep, start: int, end: int, opens: int, closes: int | None) -> None:
        self.step = step
        self.start = start
        self.end = end
        self.opens = opens
        self.closes = closes

    @property
    def late(self) -> bool:
        """Whether its longest wait was passed."""
        return self.closes is not None and self.start > self.closes


def next_start(moment: int, work_time: int, hours: WorkingHours) -> int:
    """Return the earliest moment from which a piece of work fits into one working day.

    Args:
        moment [s]: not before this.
        work_time [s]: how long the work takes, at most a working day.
        hours: when work is done.

    Returns:
        [s] moment to start.

    Raises:
        ValueError: the work is longer than a usual working day, no day is worked, or hours are none of a day.

    Source: bench-practice, work is begun where it can be ended on the day.
    """
    if not hours.days:
        raise ValueError("at least one day of the week must be worked")
    if not 0 <= hours.opens < hours.closes <= DAY:
        raise ValueError("work must end after it begins, on the same day")
    if not all(0 <= first <= last <= DAY for first, last in hours.other.values()):
        raise ValueError("work must not end before it begins on a day of its own hours")
    if work_time > hours.closes - hours.opens:
        raise ValueError("a step takes " + str(work_time) + " s, longer than a working day of "
                         + str(hours.closes - hours.opens) + " s")
    day, clock = divmod(moment, DAY)
    while True:
        opens, closes = hours.on(day)
        start = max(clock, opens)
        if opens < closes and start + work_time <= closes:
            return day * DAY + start
        day, clock = day + 1, 0


def plan(
    steps: tuple[WorkStep, ...], start: int, hours: WorkingHours, speeds: tuple[tuple[int, float], ...] = ()
) -> list[Planned]:
    """Return every step at its earliest moment; what has been done stays where it was.

    Args:
        steps: in order; those that have been done come first.
        start [s]: what is to come begins not before this; the very first step's waits do not count.
        hours: when work is done. Waiting goes on day and night.
        speeds: of drying, as `calc.shop.curing.moment_after` takes them; none of them is 0.

    Returns:
        one planned step per step.

    Raises:
        ValueError: a step is longer than a working day, no day is worked, or drying stands still.

    Source: bench-practice, a window counts from the film it lies on.
    """
    planned: list[Planned] = []
    for step in steps:
        opens = _later(speeds, planned[-1].end, step.least_wait) if planned else start
        begin = next_start(max(start, opens), step.work_time, hours) if step.done is None else step.done[0]
        closes = None
        if step.longest_wait is not None and step.counts_from is not None:
            closes = _later(speeds, planned[step.counts_from].end, step.longest_wait)
        planned.append(Planned(step, begin, begin + step.work_time if step.done is None else step.done[1],
                               opens, closes))
    return planned


def _later(speeds: tuple[tuple[int, float], ...], moment: int, time: int) -> int:
    found = moment_after(speeds, moment, time)
    if found is None:
        raise ValueError("nothing can be planned where drying stands still")
    return found
