"""What is told of a plan nail by nail: where it is, what it carries, what was found about it."""
