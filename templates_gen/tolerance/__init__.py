"""How exactly a taped template stands: the order of taping, the model, and what it says."""
