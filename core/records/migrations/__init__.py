"""The history of the tables, one file a change. Run from inside the program only, see core/records/upgrade.py."""
