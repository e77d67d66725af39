"""The sheets of the template: the wall at full scale."""
