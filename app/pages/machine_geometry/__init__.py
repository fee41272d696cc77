"""Pages on the machine's own geometry."""
