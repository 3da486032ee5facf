"""What a season log is: sheets, columns, settings, rules, units and the catalogue of problems."""
