"""Calendar files (RFC 5545, iCalendar): just what a list of appointments needs."""

from calc.dates import DAY, HOUR, date_of, two_digits

MINUTE = 60


class Event:
    """An appointment. start, end: moments on the scale of `calc.dates`, in whatever time zone the reader is.

    uid: the same in every file that tells of it. sequence: 0 at first, higher each time it is told anew.
    alarms: ([s] from its start, minus for before; words). cancelled: whether it was told of once, and is off.
    """

    def __init__(
        self, uid: str, summary: str, description: str, start: int, end: int, sequence: int,
        alarms: "tuple[tuple[int, str], ...]" = (), cancelled: bool = False,
    ) -> None:
        self.uid = uid
        self.summary = summary
        self.description = description
        self.start = start
        self.end = end
        self.sequence = sequence
        self.alarms = alarms
        self.cancelled = cancelled


LONGEST_LINE = 75  # bytes, line end left out
LINE_END = "\r\n"


def calendar_text(product: str, stamp: int, events: list[Event], modified: bool = False) -> str:
    """Return a calendar file.

    Args:
        product: names what made it.
        stamp [s]: moment that stands as the making of the file; the same input gives the same file.
        events: appointments, at least one.
        modified: whether each also says that it was last changed at that moment.

    Returns:
        text of the file, lines folded and ended as the standard asks.

    Raises:
        ValueError: there is no event, or one ends before it starts.

    Source: rfc-5545, section 3.6.1.
    """
    if not events:
        raise ValueError("a calendar must have an event")
    lines = ["BEGIN:VCALENDAR", "VERSION:2.0", "PRODID:" + escaped(product), "CALSCALE:GREGORIAN"]
    for event in events:
        if event.end < event.start:
            raise ValueError("an event must not end before it starts: " + event.uid)
        lines += [
            "BEGIN:VEVENT",
            "UID:" + escaped(event.uid),
            "DTSTAMP:" + moment_text(stamp) + "Z",
            "DTSTART:" + moment_text(event.start),
            "DTEND:" + moment_text(event.end),
            "SEQUENCE:" + str(event.sequence),
            "SUMMARY:" + escaped(event.summary),
            "DESCRIPTION:" + escaped(event.description),
        ]
        if modified:
            lines.append("LAST-MODIFIED:" + moment_text(stamp) + "Z")
        if event.cancelled:
            lines.append("STATUS:CANCELLED")
        for after, words in event.alarms:
            lines += ["BEGIN:VALARM", "ACTION:DISPLAY", "TRIGGER:" + duration_text(after),
                      "DESCRIPTION:" + escaped(words), "END:VALARM"]
        lines.append("END:VEVENT")
    lines.append("END:VCALENDAR")
    return "".join([folded(line) + LINE_END for line in lines])


def escaped(text: str) -> str:
    """Return a text value as it stands in the file: backslash, comma, semicolon and line ends marked.

    Args:
        text: any text.

    Returns:
        the text, escaped.

    Source: rfc-5545, section 3.3.11.
    """
    for mark in ("\\", ";", ","):
        text = text.replace(mark, "\\" + mark)
    text = text.replace("\r\n", "\n").replace("\r", "\n").replace("\n", "\\n")
    return "".join([mark for mark in text if mark >= " " or mark == "\t"])


def folded(line: str) -> str:
    """Return a line broken so that no part is longer than 75 bytes, and no letter is torn.

    Args:
        line: without its line end.

    Returns:
        the parts, each but the first starting with a space.

    Source: rfc-5545, section 3.1.
    """
    if len(line.encode("utf-8")) <= LONGEST_LINE:
        return line
    parts = []
    part, size = "", 0
    for mark in line:
        width = len(mark.encode("utf-8"))
        if size + width > LONGEST_LINE:
            parts.append(part)
            part, size = " ", 1
        part += mark
        size += width
    parts.append(part)
    return LINE_END.join(parts)


def duration_text(time: int) -> str:
    """Return a span of time as the file writes it, such as `-PT30M`.

    Args:
        time [s]: minus for before; seconds that make no whole minute are left out.

    Returns:
        days, hours and minutes.

    Source: rfc-5545, section 3.3.6.
    """
    days, rest = divmod(abs(time) // MINUTE, DAY // MINUTE)
    hours, minutes = divmod(rest, HOUR // MINUTE)
    clock = (str(hours) + "H" if hours else "") + (str(minutes) + "M" if minutes else "")
    text = (str(days) + "D" if days else "") + ("T" + clock if clock else "")
    return ("-" if time < 0 else "") + "P" + (text or "T0M")


def moment_text(moment: int) -> str:
    """Return a moment as the file writes it, such as `20260504T083000`.

    Args:
        moment [s]: on the scale of `calc.dates`.

    Returns:
        date and time of day.

    Source: rfc-5545, section 3.3.5.
    """
    day, clock = divmod(moment, DAY)
    year, month, of_month = date_of(day)
    years = str(year)
    return ("0" * (4 - len(years)) + years + two_digits(month) + two_digits(of_month) + "T"
            + two_digits(clock // 3600) + two_digits(clock % 3600 // 60) + two_digits(clock % 60))
