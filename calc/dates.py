"""Dates as people type and read them: `2026-05-04`.

Inside `calc` a date is a whole number, the count of days with 1 January of year 1
as day 1, in the Gregorian calendar carried back before it was in use. A moment is
a count of seconds on the same scale. No engine's own calendar is asked, so that
every engine counts alike; the small engine's takes about three times as long to load
as this whole module, on every page, and gives no reason when it refuses a date.
"""

HOUR = 3600
DAY = 86400
DAYS_IN_400_YEARS = 146097
DAYS_IN_100_YEARS = 36524
DAYS_IN_4_YEARS = 1461
DAYS_BEFORE_MONTH = (0, 31, 59, 90, 120, 151, 181, 212, 243, 273, 304, 334, 365)
MONTHS = ("January", "February", "March", "April", "May", "June", "July", "August", "September",
          "October", "November", "December")
WEEKDAYS = ("Monday", "Tuesday", "Wednesday", "Thursday", "Friday", "Saturday", "Sunday")
LAST_YEAR = 9999


def is_leap(year: int) -> bool:
    """Return whether a year has 29 February."""
    return year % 4 == 0 and (year % 100 != 0 or year % 400 == 0)


def days_in_month(year: int, month: int) -> int:
    """Return how many days a month (1 to 12) has."""
    leap_day = 1 if month == 2 and is_leap(year) else 0
    return DAYS_BEFORE_MONTH[month] - DAYS_BEFORE_MONTH[month - 1] + leap_day


def day_number(year: int, month: int, day: int) -> int:
    """Return the number of a date.

    Raises:
        ValueError: there is no such date in the years 1 to 9999; the message completes a sentence.
    """
    if not 1 <= year <= LAST_YEAR:
        raise ValueError("has no year from 1 to " + str(LAST_YEAR))
    if not 1 <= month <= 12:
        raise ValueError("has no month from 1 to 12")
    if not 1 <= day <= days_in_month(year, month):
        raise ValueError("is no day of " + MONTHS[month - 1] + " " + str(year))
    past = year - 1
    leap_day = 1 if month > 2 and is_leap(year) else 0
    return (365 * past + past // 4 - past // 100 + past // 400
            + DAYS_BEFORE_MONTH[month - 1] + leap_day + day)


def date_of(number: int) -> tuple[int, int, int]:
    """Return year, month and day of a date's number."""
    centuries, rest = divmod(number - 1, DAYS_IN_400_YEARS)
    hundreds = min(rest // DAYS_IN_100_YEARS, 3)
    rest -= hundreds * DAYS_IN_100_YEARS
    fours, rest = divmod(rest, DAYS_IN_4_YEARS)
    ones = min(rest // 365, 3)
    rest -= ones * 365
    year = 400 * centuries + 100 * hundreds + 4 * fours + ones + 1
    month = 1
    while rest >= days_in_month(year, month):
        rest -= days_in_month(year, month)
        month += 1
    return year, month, rest + 1


def weekday(number: int) -> int:
    """Return the day of the week of a date's number: Monday is 0, Sunday 6."""
    return (number - 1) % 7


def parse_date(text: str) -> int:
    """Return the number of a date typed as year-month-day.

    Raises:
        ValueError: it cannot be read; the message completes a sentence that starts with the text.
    """
    parts = text.strip().split("-")
    if [len(part) for part in parts] not in ([4, 2, 2], [4, 1, 2], [4, 2, 1], [4, 1, 1]):
        raise ValueError("is not a date as year-month-day")
    for part in parts:
        if not all(mark in "0123456789" for mark in part):
            raise ValueError("is not a date as year-month-day")
    return day_number(int(parts[0]), int(parts[1]), int(parts[2]))


def ways_to_a_date(text: str, first: int, last: int) -> list[str]:
    """Return what may be typed behind a text that is on its way to a date from a first to a last one.

    Where any such date begins with the text, one of these makes a date of it: what follows in the first, in
    the last, and in one whose digits suit every year, month and day; or what completes a month of one digit.
    """
    whole = [show_date(first), show_date(last), "1111-11-11"]
    return [date[len(text):] for date in whole if len(text) < len(date)] + ["-1", "-1-1", "1"]


def show_date(number: int) -> str:
    """Return a date as year-month-day; `parse_date` reads it back."""
    year, month, day = date_of(number)
    years = str(year)
    return "0" * (4 - len(years)) + years + "-" + two_digits(month) + "-" + two_digits(day)


def show_day(number: int) -> str:
    """Return a date in words, such as `Mon 4 May 2026`."""
    year, month, day = date_of(number)
    return WEEKDAYS[weekday(number)][:3] + " " + str(day) + " " + MONTHS[month - 1] + " " + str(year)


def show_clock(moment: int) -> str:
    """Return the time of day of a moment, such as `08:30`."""
    minutes = moment % DAY // 60
    return two_digits(minutes // 60) + ":" + two_digits(minutes % 60)


def show_moment(moment: int) -> str:
    """Return a moment as day and time of day, such as `Mon 4 May 2026, 08:30`."""
    return show_day(moment // DAY) + ", " + show_clock(moment)


def two_digits(number: int) -> str:
    """Return a number below 100 with a leading zero where it needs one."""
    return ("0" if number < 10 else "") + str(number)
