"""Pages about the whole shop: which machine stands where, what is to be done, what was done."""
