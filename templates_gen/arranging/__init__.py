"""How the frames of a group sit to each other: the plan of the wall."""
