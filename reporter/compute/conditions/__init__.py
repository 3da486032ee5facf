"""What stints were fished under: readings, light, moon, cover and the rest, in bands; rates by band."""
