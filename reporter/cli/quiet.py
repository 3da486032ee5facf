"""The option --quiet, which every command has."""

import click

quiet_option = click.option("--quiet", is_flag=True, help="Print nothing but failures.")
