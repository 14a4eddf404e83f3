"""Whether a walk is still hidden by what stands beside it, and which other way leads in.

In: walks, screens, crops beside them, the log. Out: walks that are open from a day on, with the
other ways to their stands. Decided: from which day a crop hides nobody. Never: how tall it grows.
"""
