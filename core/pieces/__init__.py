"""Test pieces: what to print and where to put the jaws."""
