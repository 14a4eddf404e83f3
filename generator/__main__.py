"""The command `handbook`, which `python -m generator` is too."""

import gc

from generator.cli import main


def run() -> None:
    """Run the command."""
    # it ends before what the collector would find is worth the time it takes to look
    gc.disable()
    main()


if __name__ == "__main__":
    run()
