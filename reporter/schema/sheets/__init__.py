"""The sheets of the season log, one file a sheet."""
