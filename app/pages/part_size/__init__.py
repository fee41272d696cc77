"""Pages about the size of printed parts."""
