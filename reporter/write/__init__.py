"""Draws the described books; the only importer of xlsxwriter."""
