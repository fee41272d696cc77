"""Pages about the filament itself."""
