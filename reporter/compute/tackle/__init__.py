"""Tackle: what hung up, what was lost, what was used how much, and what to have for the coming season."""
