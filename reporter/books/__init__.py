"""Every workbook that comes out, described as plain data."""
