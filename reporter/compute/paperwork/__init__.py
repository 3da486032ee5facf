"""Paperwork: use by permit and report, papers, due dates, fees, numbers of trips, ledger and harvest."""
