"""What may lie behind the wall, and where nails enter it."""
