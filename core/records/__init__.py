"""The database: everything that is kept, and nothing else; SQL lives here and only here."""
