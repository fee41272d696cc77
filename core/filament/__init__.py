"""The filament itself: what it is, how thick, and how much of it is really fed."""
