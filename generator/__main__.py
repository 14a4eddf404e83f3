"""`python -m generator` is the same as the command `handbook`."""

from generator.cli import main

if __name__ == "__main__":
    main()
