"""Runs a preview until it is stopped: makes pages on each save, and serves them meanwhile."""

import gc
import signal
import tempfile
import threading
import webbrowser
from collections.abc import Callable, Iterator
from contextlib import contextmanager
from http.server import ThreadingHTTPServer
from pathlib import Path
from types import FrameType

from generator.inventory.load import Loaded
from generator.live.preview import Preview, Renewed
from generator.live.server import LOOPBACK, server_of
from generator.live.told import Told
from generator.live.watching import files_of
from generator.plan.model.plan import Plan

LOOK_EVERY_S = 0.05
ALL_IN_WORDS = "Pages of {folder} stand at {address} until you press Ctrl-C."


def run_preview(
    folder: Path,
    read: Callable[[], Loaded],
    planned: Callable[[Loaded], Plan],
    port: int,
    say: Callable[[str], None],
    *,
    opens_browser: bool,
) -> None:
    """Make the pages of a property folder, serve them, and make them anew on each save.

    `read` and `planned` give the folder's records and one reader's plan. Returns once it is told to
    stop, leaving nothing behind. Raises OSError where the port is taken.
    """
    told = Told()
    with _own_folder() as own, _stopped_by_signal() as stopped:
        preview = Preview(read, planned, own, told)
        seen = files_of(folder)
        # before there is a second thread: two processes share the first round
        _say(say, preview.renew(stopped.is_set), told, ())
        with _serving(server_of(told, port)) as address:
            say(ALL_IN_WORDS.format(folder=folder.name or folder, address=address))
            if opens_browser:
                webbrowser.open(address)
            _watch(folder, seen, preview, told, say, stopped)


def _watch(
    folder: Path,
    seen: dict[str, tuple[int, int, int]],
    preview: Preview,
    told: Told,
    say: Callable[[str], None],
    stopped: threading.Event,
) -> None:
    while not stopped.wait(LOOK_EVERY_S):
        now = files_of(folder)
        if now == seen:
            continue
        seen, before = now, told.faults

        def is_stale(seen: object = now) -> bool:
            return stopped.is_set() or files_of(folder) != seen

        _say(say, preview.renew(is_stale), told, before)


def _say(
    say: Callable[[str], None], renewed: Renewed | None, told: Told, before: tuple[str, ...]
) -> None:
    for fault in told.faults if told.faults != before else ():
        say(fault)
    if renewed is not None:
        first = f"the one looked at in {renewed.looked_at_s:.2f} s, " if renewed.looked_at_s else ""
        many = "1 page" if renewed.pages == 1 else f"{renewed.pages} pages"
        say(f"{many} made anew: {first}all in {renewed.whole_s:.2f} s.")
    # a command does without the collector; one that stays makes up for it while nobody waits
    gc.collect()


@contextmanager
def _own_folder() -> Iterator[Path]:
    with tempfile.TemporaryDirectory(prefix="handbook-preview-", ignore_cleanup_errors=True) as own:
        yield Path(own)


@contextmanager
def _serving(server: ThreadingHTTPServer) -> Iterator[str]:
    thread = threading.Thread(target=server.serve_forever, args=(LOOK_EVERY_S,), daemon=True)
    thread.start()
    try:
        yield f"http://{LOOPBACK}:{server.server_port}/"
    finally:
        server.shutdown()
        server.server_close()


@contextmanager
def _stopped_by_signal() -> Iterator[threading.Event]:
    """Take Ctrl-C, and what a system sends to end a program, for the word to stop."""
    stopped = threading.Event()

    def stop(number: int, frame: FrameType | None) -> None:  # noqa: ARG001 - Python calls it so
        stopped.set()

    before = {number: signal.signal(number, stop) for number in (signal.SIGINT, signal.SIGTERM)}
    try:
        yield stopped
    finally:
        for number, handler in before.items():
            signal.signal(number, handler)
