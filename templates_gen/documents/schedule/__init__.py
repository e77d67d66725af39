"""Every nail: where it is, what it carries, what was found about it."""
