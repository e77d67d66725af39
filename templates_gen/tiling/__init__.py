"""Which part of the wall each page shows."""
