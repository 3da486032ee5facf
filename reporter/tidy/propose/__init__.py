"""A first layout for a log that is not ours: proposed with how sure it is, never applied."""
