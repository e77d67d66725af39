"""Labels for the backs of the frames."""
