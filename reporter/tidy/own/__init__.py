"""Logs in a layout that is not ours: its headings, what they mean, and the rows of the log found in them."""
