"""Records of what the program planned, drew and told: a text for every job, beside the code that writes them."""
