"""The demo shop: an invented shop, simulated with planted causes and typed into the pages of the program."""
