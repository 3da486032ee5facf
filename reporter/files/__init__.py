"""Files on disk: atomic replacement, guards, fingerprints, the mark that says we wrote this."""
