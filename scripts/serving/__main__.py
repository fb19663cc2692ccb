"""Serve the built site on this machine."""

import argparse
import errno
import sys
from pathlib import Path

import waitress

from scripts.serving.application import application

SITE = Path(__file__).parents[2] / "site"
HOST = "127.0.0.1"
DEFAULT_PORT = 8000
THREADS = 8


def main() -> int:
    """Serve until interrupted; return the exit status."""
    port = _options().port
    try:
        server = waitress.create_server(application(SITE), host=HOST, port=port, threads=THREADS)
    except OSError as error:
        print(f"\n{_reason(error, port)}", file=sys.stderr)
        return 1
    print(f"\nServing at http://{HOST}:{server.effective_port}/   (Ctrl+C to stop)", flush=True)
    try:
        server.run()
    except KeyboardInterrupt:
        server.close()
    return 0


def _reason(error: OSError, port: int) -> str:
    if error.errno == errno.EADDRINUSE:
        return (f"Port {port} is taken by another program. Stop that one, or choose another port: "
                f"./scripts/serve --port {port + 1}")
    if error.errno == errno.EACCES:
        return f"Port {port} needs more rights than you have. Choose one above 1023: --port {DEFAULT_PORT}"
    return f"Port {port} cannot be used: {error}"


def _options() -> argparse.Namespace:
    parser = argparse.ArgumentParser(prog="scripts/serve", description=__doc__)
    parser.add_argument("--port", type=_port, default=DEFAULT_PORT, metavar="N", help="default: %(default)s")
    return parser.parse_args()


def _port(text: str) -> int:
    if not (text.isascii() and text.isdigit() and int(text) <= 65535):
        raise argparse.ArgumentTypeError(f"a port is a number from 0 to 65535, not {text!r}")
    return int(text)


if __name__ == "__main__":
    sys.exit(main())
