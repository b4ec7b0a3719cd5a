"""The SQLite store: schema and migrations, rows, backup, location."""
