"""What a photograph tells: how taped paper lies, how a group would look on a wall, what hangs off by how much."""
