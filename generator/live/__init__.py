"""One reader's book while it is typed: made anew on each save, shown on this machine alone."""
