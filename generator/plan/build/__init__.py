"""The one place where a plan is put together.

In: an inventory, a season, a day. Out: the owner's plan. Decided: the order in which the rooms
are asked. Never: a rule of its own.
"""
