"""Photographs that never were: pages rendered, laid on a wall as taped, and seen by a camera of our own."""
