"""The blank season log: how to fill it in, a boat card, and the log's sheets with their drop-downs."""

from reporter.books.blank.book import blank_book, ready_hunches

__all__ = ["blank_book", "ready_hunches"]
