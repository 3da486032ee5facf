"""What is kept beside a log."""
