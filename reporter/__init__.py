"""The season reporter: a guide's season log in, a season report out."""

__version__ = "0.1.0"
