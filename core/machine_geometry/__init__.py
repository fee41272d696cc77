"""Subjects of the machine itself: the parts of its drives and where they lead it."""
