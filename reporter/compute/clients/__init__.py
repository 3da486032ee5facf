"""Clients: what each may read of his own trips, and nothing else."""
