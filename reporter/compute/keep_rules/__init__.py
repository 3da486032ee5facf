"""Fish entered as kept or released against the rules that the guide typed on Keep rules."""
