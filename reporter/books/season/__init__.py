"""The sheets of the season report, one file a sheet."""
