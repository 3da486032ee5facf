"""Several logs of one guide as one record: in which order, under which names, and when not at all."""
