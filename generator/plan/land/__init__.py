"""Where things lie, and what that changes: pieces of ground, distances, what is left of them.

In: points of places, stands, walks and things of the land. Out: where each lies, how far its points
may be off, which ground of a place is left beside what labels keep off. Decided: what lies near
enough to count, with what points may be off counted against it. Never: an amount of anything, a
label's distance.
"""
