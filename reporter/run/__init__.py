"""One flow a file."""
