"""The measuring sheet: every frame from behind, with blanks."""
