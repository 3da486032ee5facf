"""Hourly weather files made typed: one table of hours a station, in the units kept inside."""
