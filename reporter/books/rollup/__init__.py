"""The pages of a roll-up: what many guides' logs come to, for an association or a land manager."""
