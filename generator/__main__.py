"""The command `handbook`, which `python -m generator` is too."""

import gc

from generator.cli import main


def run() -> None:
    """Run the command."""
    # it ends before what the collector would find is worth the time it takes to look
    gc.disable()
    try:
        main()
    finally:
        # as it ends Python looks through all there is, switched off or not, but not what is frozen
        gc.freeze()


if __name__ == "__main__":
    run()
