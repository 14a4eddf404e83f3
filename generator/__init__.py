"""Makes a habitat handbook from a property folder."""

__version__ = "0.1.0"
