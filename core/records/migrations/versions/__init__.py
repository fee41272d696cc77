"""One file a version of the tables, oldest 0001."""
