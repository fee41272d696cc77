"""Parts that pages are made of; they know no store and no page."""
