"""Weights, wires and fixings: what hangs on what, computed."""
