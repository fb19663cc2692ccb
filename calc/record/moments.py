"""Moments as an entry writes them: `2026-05-12T18:10+02:00`.

The offset stays in the text, so that a reading of the afternoon is one of the afternoon wherever it is read
later. Entries are put in order by the moment in world time.
"""

from calc.dates import DAY, parse_date, show_clock, show_date, show_day, two_digits

MINUTE = 60
MOST_OFFSET = 14 * 60
"""[min] from world time, the most that any zone has."""


def parse_moment(text: str) -> int:
    """Return a moment in world time.

    Args:
        text: date, `T`, hours and minutes (seconds are let be), offset as `+02:00` or `Z`.

    Returns:
        [s] on the scale of `calc.dates`, in world time.

    Raises:
        ValueError: it cannot be read; the message completes a sentence that starts with the text.

    The form is that of RFC 3339, section 5.6.
    """
    local, offset = _split(text)
    return local - offset * MINUTE


def local_moment(text: str) -> int:
    """Return an entry's moment by the clock on the wall where it was written.

    Args:
        text: a moment as an entry writes it.

    Returns:
        [s] on the scale of `calc.dates`.

    Raises:
        ValueError: it cannot be read.

    The form is that of RFC 3339, section 5.6.
    """
    return _split(text)[0]


def local_day(text: str) -> int:
    """Return the number of the day that an entry's moment has where it was written.

    Args:
        text: a moment as an entry writes it.

    Returns:
        number of the day, as `calc.dates` counts.

    Raises:
        ValueError: it cannot be read.

    The form is that of RFC 3339, section 5.6.
    """
    return _split(text)[0] // DAY


def show_local(text: str) -> str:
    """Return an entry's moment as people read it, such as `Tue 12 May 2026, 18:10`.

    Args:
        text: a moment as an entry writes it.

    Returns:
        day and time of day where it was written.

    Raises:
        ValueError: it cannot be read.
    """
    local = _split(text)[0]
    return show_day(local // DAY) + ", " + show_clock(local)


def short_day(text: str) -> str:
    """Return the day of an entry's moment without its year, such as `12 May`.

    Args:
        text: a moment as an entry writes it.

    Returns:
        day and month.

    Raises:
        ValueError: it cannot be read.
    """
    parts = show_day(local_day(text)).split(" ")
    return parts[1] + " " + parts[2][:3]


def moment_text(local: int, offset: int) -> str:
    """Return a moment as an entry writes it.

    Args:
        local [s]: time of day and date where it is written, on the scale of `calc.dates`.
        offset [min]: of that place from world time.

    Returns:
        the text; `parse_moment` reads it back to the minute.

    Raises:
        ValueError: the offset is none that any zone has.

    The form is that of RFC 3339, section 5.6.
    """
    if not -MOST_OFFSET <= offset <= MOST_OFFSET:
        raise ValueError("an offset must be within 14 hours of world time, not " + str(offset) + " minutes")
    sign = "-" if offset < 0 else "+"
    hours, minutes = divmod(abs(offset), 60)
    return (show_date(local // DAY) + "T" + show_clock(local) + sign + two_digits(hours) + ":"
            + two_digits(minutes))


def _split(text: str) -> tuple[int, int]:
    """Return seconds of local time and minutes of offset."""
    if len(text) > 40 or text[10:11] != "T":
        raise ValueError("is not a moment as year-month-dayThours:minutes with its offset")
    clock, offset = _clock_and_offset(text[11:])
    return parse_date(text[:10]) * DAY + clock, offset


def _clock_and_offset(text: str) -> tuple[int, int]:
    if text[-1:] == "Z":
        return _clock(text[:-1]), 0
    for sign in ("+", "-"):
        clock, mark, offset = text.partition(sign)
        if mark:
            minutes = _clock(offset) // MINUTE
            if minutes > MOST_OFFSET:
                raise ValueError("has an offset of more than 14 hours")
            return _clock(clock), minutes if sign == "+" else -minutes
    raise ValueError("has no offset from world time")


def _clock(text: str) -> int:
    parts = text.partition(".")[0].split(":")
    if len(parts) not in (2, 3) or not all(_is_number(part) for part in parts):
        raise ValueError("has no hours and minutes")
    numbers = [int(part) for part in parts]
    if numbers[0] > 23 or numbers[1] > 59 or (len(numbers) == 3 and numbers[2] > 60):
        raise ValueError("has no such time of day")
    return numbers[0] * 3600 + numbers[1] * MINUTE


def _is_number(text: str) -> bool:
    return len(text) == 2 and all(mark in "0123456789" for mark in text)

