"""Post-frontal days: what hourly, daily and a trip's own readings show, and what each date was."""
