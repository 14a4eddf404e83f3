"""Kinds of work that stand together wherever a season is told, each kind in one group."""

WORK_GROUPS = {
    "Spraying": ("spray",),
    "Sowing and planting": ("till", "roll", "sow", "plant", "replant"),
    "Lime and fertilizer": ("lime", "fertilize"),
    "Mowing, burning and tending": ("mow", "burn", "tend"),
    "Walks, lanes and water": ("cut", "rake", "dig", "refill"),
    "Looking and counting": ("look", "count", "inspect"),
}
