"""Money, stock, orders and hours.

In: what jobs take, prices, packages, the log. Out: purchases with the day to order by, costs,
what is paid back, hours against weekends. Decided: how much is bought. Never: a limit or a stop
of a spraying.
"""
