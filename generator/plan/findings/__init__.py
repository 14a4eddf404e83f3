"""What stops, cautions and notes say, and in which order.

In: a reason, its subject and what fills its words. Out: a finding, for the owner and for
others. Decided: how grave a reason is, its cure, the chapter that helps. Never: whether it
holds.
"""
