"""What each reader sees.

In: the owner's plan. Out: the plan with things taken away, what was handed to whom, and what
that gives away. Decided: which field reaches whom; a new one reaches nobody until it is named
here. Never: anything that is worked out anew.
"""
