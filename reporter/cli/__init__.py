"""The command line: lazy commands, options, messages, exit codes."""
