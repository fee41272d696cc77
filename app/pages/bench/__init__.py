"""The bench: instruments and charts."""
