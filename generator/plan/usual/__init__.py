"""Figures far from what is usual.

In: typed figures and what was worked out of them; ranges with their sources. Out: a caution for
one slip, at the figure it stands in. Decided: which figure is the first that a slip shows in.
Never: a figure put right.
"""
