"""Data files that the program reads: help, tables, icons, translations, licences."""
