"""Pages about what leaves the nozzle."""
