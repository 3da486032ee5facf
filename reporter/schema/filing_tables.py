"""The tables that `filing --tables` writes."""

from reporter.schema.csv_table import CsvTable
from reporter.schema.keep_tables import KEEP_CHECKS
from reporter.schema.paperwork_tables import PAPERWORK_TABLES

FILING_TABLES: tuple[CsvTable, ...] = (*PAPERWORK_TABLES, KEEP_CHECKS)
