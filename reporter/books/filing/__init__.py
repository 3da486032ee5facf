"""The pages of a filing: what supports a report to an agency or a land manager."""
