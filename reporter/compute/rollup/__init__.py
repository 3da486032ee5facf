"""Many guides' logs together: what is kept of each, and totals that no guide can be read out of."""
