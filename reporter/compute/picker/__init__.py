"""What worked: the techniques that a season's own record puts first on days like the one chosen."""
