"""What a roll-up of many guides' logs may tell, and by which words."""

MIN_GUIDES = 3
"""Guides who must stand behind a figure by water, month, permit or species: with two, each knows his own part
and has the other's by taking it away. What is kept of a cell, two of its guides, goes with 3 and no other."""

WATER, MONTH, PERMIT = "water", "month", "permit"
WAYS = (WATER, MONTH, PERMIT)
"""By what totals are given, besides all together and by guide."""

ALL = "all"

OTHERS = "others"
"""The line that holds what fewer guides than MIN_GUIDES stand behind."""

OTHER_SPECIES = "other species"

NOT_SHARED = "waters not shared by name"
NO_PERMIT, PERMIT_NOT_TOLD = "no permit written", "permits not told"

NO_TRIP = "no trip in the log"
NOT_READ = "no trip read; rows not used may lie in it"
