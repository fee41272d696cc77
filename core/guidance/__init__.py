"""What follows from the results: which setting an error belongs to, and what to leave alone."""
