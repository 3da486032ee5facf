"""A client's copy: one page, then his trips and what was tied on."""
