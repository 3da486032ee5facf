"""Open data: a season's guided trips as events and their fish as occurrences, to give to science."""
