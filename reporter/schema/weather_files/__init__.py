"""Which hourly weather files are known: what each is recognised by, and what its columns hold."""
