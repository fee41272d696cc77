"""Trials of the flow: how much plastic leaves the nozzle, and how fast it can."""
