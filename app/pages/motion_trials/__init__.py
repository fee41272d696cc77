"""Pages on motion: what speed costs in quality, ringing, and any setting tried step by step."""
