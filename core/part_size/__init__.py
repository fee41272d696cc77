"""Size errors of printed parts, told apart by their cause."""
