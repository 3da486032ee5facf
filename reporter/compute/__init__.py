"""Pure computations, tables to tables, whole columns at a time."""
