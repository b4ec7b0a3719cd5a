"""The report for a clinic visit: page, tables, figures and wording."""
