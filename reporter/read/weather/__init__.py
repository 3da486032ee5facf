"""Hourly weather files as they stand: known by their headings, columns of text, nothing understood yet."""
