"""Several arrangements of one job to choose from: found, drawn on one page, and the chosen one kept."""
