"""Finds the Chromium for browser tests; `python -m tests.chromium` installs one if needed."""

import os
import shutil
import subprocess
import sys
from pathlib import Path

from playwright.sync_api import sync_playwright

COMMANDS = ("chromium", "chromium-browser", "google-chrome", "google-chrome-stable", "chrome")

# A test must not reach the network, not even for the browser's own upkeep.
LAUNCH_FLAGS = [
    "--no-sandbox",
    "--disable-gpu",
    "--disable-quic",
    "--no-first-run",
    "--disable-background-networking",
    "--disable-component-update",
    "--disable-sync",
]

MISSING = (
    "No Chromium was found and none could be installed: put one on the PATH "
    "(on Debian, as root: apt-get install chromium) and run the tests again."
)


def find_chromium() -> Path:
    """The browser on the PATH, else the one playwright installed for itself.

    Must not be called while a synchronous playwright runs. Raises FileNotFoundError, with one
    sentence that says what to do, where there is neither.
    """
    for command in COMMANDS:
        if found := shutil.which(command):
            return Path(found)
    with sync_playwright() as playwright:
        own = Path(playwright.chromium.executable_path)
    if own.is_file():
        return own
    raise FileNotFoundError(MISSING)


def install_chromium() -> None:
    """Tries the system's packages where this user may install them, then playwright's own build."""
    if shutil.which("apt-get") and os.geteuid() == 0:
        environment = os.environ | {"DEBIAN_FRONTEND": "noninteractive"}
        install = ["apt-get", "install", "-y", "--no-install-recommends", "chromium"]
        for command in (["apt-get", "update"], install):
            subprocess.run(command, env=environment, stdout=subprocess.DEVNULL, check=False)
        if shutil.which("chromium"):
            return
    subprocess.run([sys.executable, "-m", "playwright", "install", "chromium"], check=False)


def main() -> None:
    try:
        find_chromium()
    except FileNotFoundError:
        print("Installing Chromium for the browser tests")
        install_chromium()
        try:
            find_chromium()
        except FileNotFoundError as missing:
            sys.exit(str(missing))


if __name__ == "__main__":
    main()
