"""Seed and rows of plants.

In: rates of pure live seed, tags, lots at hand, catch tests of spreaders and drills, rows. Out:
pounds off the bag, settings, fills and passes, what does not reach. Decided: which lot goes
short. Never: seed of a tag that is not typed.
"""
