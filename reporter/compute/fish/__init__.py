"""Fish: how many of each species, how long and how heavy, and what lengths and weights tell."""
