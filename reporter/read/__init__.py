"""From a file to raw sheets: cells with their addresses, one door."""
