"""Tap holes of 60-degree threads, in the convention of shop charts.

Per cent of thread counts here from a thread three quarters of the sharp V deep on each side: 2 x 3/4 x
sin 60 = 1.299 pitches over both sides. A second convention in use counts from 5/8 of the V (1.0825
pitches) and gives other holes for the same per cent; shop charts follow the first.
"""

import math

CHART_THREAD_DEPTH = 1.5 * math.sin(math.pi / 3)
"""Depth of a 100 per cent thread over both sides, in pitches: 1.2990."""

INTERNAL_THREAD_DEPTH = 1.25 * math.sin(math.pi / 3)
"""Depth of the basic internal thread over both sides, in pitches: 1.0825."""


CHART_SHARE = 0.75
"""Of a full thread, for which shop charts give tap drills."""


def tap_hole(major: float, pitch: float, share: float) -> float:
    """Return the hole to drill for a share of thread, as shop charts count it.

    D - 1.299 p share.

    Args:
        major [m]: outside diameter of the thread, more than 1.299 pitches.
        pitch [m]: > 0.
        share [1]: from 0 to 1; 0.75 is what charts are made for.

    Returns:
        [m] diameter of the hole.

    Raises:
        ValueError: share is outside 0 to 1, or the thread leaves no hole.

    Source: percent-of-thread, hole = D - 1.299 x pitch x share.
    """
    _require_thread(major, pitch)
    if not 0.0 <= share <= 1.0:
        raise ValueError(f"share must be from 0 to 1, got {share}")
    return major - CHART_THREAD_DEPTH * pitch * share


def share_of_thread(major: float, pitch: float, hole: float) -> float:
    """Return the share of thread that a drilled hole leaves room for.

    (D - d) / (1.299 p).

    Args:
        major [m]: outside diameter of the thread, more than 1.299 pitches.
        pitch [m]: > 0.
        hole [m]: diameter drilled.

    Returns:
        [1] share; over 1 the tap would have to cut more than the thread is deep, below 0 it cuts nothing.

    Raises:
        ValueError: the thread leaves no hole.

    Source: percent-of-thread, hole = D - 1.299 x pitch x share.
    """
    _require_thread(major, pitch)
    return (major - hole) / (CHART_THREAD_DEPTH * pitch)


def basic_minor_diameter(major: float, pitch: float) -> float:
    """Return the basic minor diameter of an internal thread.

    D - 1.0825 p.

    Args:
        major [m]: outside diameter of the thread, more than 1.299 pitches.
        pitch [m]: > 0.

    Returns:
        [m] minor diameter.

    Raises:
        ValueError: the thread leaves no hole.

    Source: unified-thread-form, 5/8 of the sharp V.
    """
    _require_thread(major, pitch)
    return major - INTERNAL_THREAD_DEPTH * pitch


def _require_thread(major: float, pitch: float) -> None:
    if not 0.0 < pitch < math.inf or not CHART_THREAD_DEPTH * pitch < major < math.inf:
        raise ValueError(f"major must be more than 1.299 pitches, got {major} m with a pitch of {pitch} m")
