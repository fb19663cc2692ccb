"""Run the measurements named, or all of them."""

import argparse

from scripts.measuring import blocking, bow, bows, engines, job, keystroke, link_to_answer

MEASUREMENTS = {"link": link_to_answer.measure, "blocking": blocking.measure, "keystroke": keystroke.measure,
                "engines": engines.measure, "bow": bow.measure, "job": job.measure, "bows": bows.measure}


def main() -> None:
    """Measure and print."""
    parser = argparse.ArgumentParser(prog="scripts/bench", description=__doc__)
    parser.add_argument("measurements", nargs="*", metavar="MEASUREMENT",
                        help="any of: " + ", ".join(MEASUREMENTS) + " (default: all)")
    parser.add_argument("--runs", type=int, default=5, metavar="N", help="default: %(default)s")
    options = parser.parse_args()
    unknown = set(options.measurements) - set(MEASUREMENTS)
    if unknown:
        parser.error(f"unknown: {', '.join(sorted(unknown))}; there are {', '.join(MEASUREMENTS)}")
    for name in options.measurements or MEASUREMENTS:
        MEASUREMENTS[name](options.runs)


if __name__ == "__main__":
    main()
