"""A slow line to the site: a TCP relay with a rate shared by all connections and a round trip.

The browser's own throttling does not reach workers, so the line itself is made
slow. Simulated: the rate, the round trip, and one more round trip to open a
connection. Not simulated: losses, the slow start of TCP, and encryption.
"""

import asyncio
import threading
import time
from collections.abc import Iterator
from contextlib import contextmanager
from typing import NamedTuple

CHUNK_BYTES = 4096
"""Small, so that connections that load at the same time share the line evenly."""


class Line(NamedTuple):
    """How slow. bits_per_second None: as fast as the machine."""

    title: str
    bits_per_second: float | None
    round_trip_s: float


class Relay:
    """Relays connections to a port on this machine over a line, counting what comes down."""

    def __init__(self, target_port: int, line: Line) -> None:
        self._came_down: list[tuple[float, int]] = []
        self.port = 0
        self._target_port = target_port
        self._line = line
        self._turn = asyncio.Lock()
        self._free_at = 0.0

    def bytes_down(self, until: float) -> int:
        """Return how much had come down at a time [s since 1970]."""
        return sum(size for at, size in self._came_down if at <= until)

    async def serve(self) -> asyncio.Server:
        """Start to listen on a free port."""
        server = await asyncio.start_server(self._connect, "127.0.0.1", 0)
        self.port = server.sockets[0].getsockname()[1]
        return server

    async def _connect(self, reader: asyncio.StreamReader, writer: asyncio.StreamWriter) -> None:
        try:
            await asyncio.sleep(self._line.round_trip_s)
            from_site, to_site = await asyncio.open_connection("127.0.0.1", self._target_port)
            await asyncio.gather(self._pump(reader, to_site, down=False),
                                 self._pump(from_site, writer, down=True))
        except asyncio.CancelledError:
            pass  # the measurement is over

    async def _pump(self, reader: asyncio.StreamReader, writer: asyncio.StreamWriter, down: bool) -> None:
        later = asyncio.get_running_loop().call_later
        travel_s = self._line.round_trip_s / 2
        try:
            while data := await reader.read(CHUNK_BYTES):
                if down:
                    await self._pass(len(data))
                    self._came_down.append((time.time(), len(data)))
                later(travel_s, _hand_over, writer, data)
        except ConnectionError:
            pass
        later(travel_s, writer.close)

    async def _pass(self, size: int) -> None:
        """Wait for this connection's turn and until the line has carried its bytes."""
        if self._line.bits_per_second is None:
            return
        clock = asyncio.get_running_loop().time
        async with self._turn:
            self._free_at = max(clock(), self._free_at) + 8 * size / self._line.bits_per_second
            await asyncio.sleep(self._free_at - clock())


def _hand_over(writer: asyncio.StreamWriter, data: bytes) -> None:
    if not writer.is_closing():
        writer.write(data)


@contextmanager
def relayed(target_port: int, line: Line) -> Iterator[Relay]:
    """Run a relay in a thread of its own."""
    loop = asyncio.new_event_loop()
    thread = threading.Thread(target=loop.run_forever)
    thread.start()
    relay = Relay(target_port, line)
    server = asyncio.run_coroutine_threadsafe(relay.serve(), loop).result()
    try:
        yield relay
    finally:
        asyncio.run_coroutine_threadsafe(_end(server), loop).result()
        loop.call_soon_threadsafe(loop.stop)
        thread.join()
        loop.close()


async def _end(server: asyncio.Server) -> None:
    server.close()
    others = asyncio.all_tasks() - {asyncio.current_task()}
    for each in others:
        each.cancel()
    await asyncio.gather(*others, return_exceptions=True)
