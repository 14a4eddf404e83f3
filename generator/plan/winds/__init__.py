"""Wind: what a wind is for a stand and for the walk that goes with it.

In: what is typed of stands and walks, a wind told by forecast or in degrees. Out: verdicts with
their reasons, the air of slopes, what typed winds and what is worked out disagree on. Decided: how
wide scent goes, which wind is too slow to count on, which walk goes with a stand. Never: whether
somebody may go there, which days and stops say first.
"""
