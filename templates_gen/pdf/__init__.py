"""Finished pages written as a PDF file."""

MADE_BY = "templates-gen"
"""What a file of ours says it was created with; it stands in the file as these plain bytes."""
