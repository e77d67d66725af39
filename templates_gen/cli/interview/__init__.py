"""A first job file: from answers to questions, from a sample, or out of a printed template."""
