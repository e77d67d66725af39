"""How exactly a taped template stands: the inputs, the model, and what it says."""
