"""Arrangements that are found by computing."""
