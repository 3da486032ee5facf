"""Hunches: rules of thumb read as they were typed and held against the record."""
