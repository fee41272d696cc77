"""What Slipgauge calculates and keeps. Nothing below imports Qt."""
