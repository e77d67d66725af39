"""Finished pages written as a PDF file."""
