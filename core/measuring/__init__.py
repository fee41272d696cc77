"""Methods of measurement that every subject shares."""
