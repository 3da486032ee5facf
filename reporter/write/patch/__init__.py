"""Patched copies: a few cells of somebody's workbook changed in its own bytes, all else left as it is."""
