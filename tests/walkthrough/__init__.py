"""The walkthrough with pictures: a story that is told on the real window, so that text and pictures never go stale."""
