"""How things lie to each other: places on the same ground, what is misplaced, what is near work.

In: where each thing lies, how far its points may be off; a grid of heights. Out: which places share
ground, how steep a place is that nobody measured, and what is told of where things lie. Decided:
when two places count as the same ground, what lies where it cannot be meant, what is near enough
to be told. Never: an amount of anything.
"""
