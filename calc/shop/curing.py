"""How far drying has come in a shop whose warmth was read now and then.

Moments are whole seconds on the scale of `calc.dates`.
"""


def moment_after(speeds: tuple[tuple[int, float], ...], start: int, time: float) -> int | None:
    """Return when a time that is stated for one warmth has passed in another.

    Each speed holds until the next one was read; the first also before it was, the last one for good.

    Args:
        speeds: (moment [s], speed [1]) in order of time: how fast it went from then on, against the warmth
            for which the time is stated; 0 where it stood still. None of them: as stated.
        start [s]: moment at which it begins.
        time [s]: as stated, >= 0.

    Returns:
        [s] moment; None where it stands still before it gets there.

    Raises:
        ValueError: time or a speed is negative.

    Limits:
        Between two readings a shop may have been warmer or colder than both.

    Source: cure-doubling, derived here: the shares of the time that pass at each warmth add up.
    """
    if time < 0 or any(speed < 0 for _, speed in speeds):
        raise ValueError("times and speeds of drying must not be negative")
    left, now = time, start
    for (_, speed), (ends, _) in zip(speeds, speeds[1:]):
        if ends <= now:
            continue
        if (ends - now) * speed >= left:
            return now + int(left / speed) if left else now
        left -= (ends - now) * speed
        now = ends
    speed = speeds[-1][1] if speeds else 1.0
    if speed == 0:
        return None if left else now
    return now + int(left / speed)
