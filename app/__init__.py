"""The window: Qt lives here and only here; no formula, no SQL."""
