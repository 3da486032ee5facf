"""From raw sheets to typed tables and problems; what a person typed never raises."""
