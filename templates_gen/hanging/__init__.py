"""Where a frame bears, what its wire does, and what its fixings go into."""
