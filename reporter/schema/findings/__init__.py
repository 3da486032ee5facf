"""The catalogue of findings, by what they do to the report."""
