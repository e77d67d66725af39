"""Every paper, one folder each, and the calls that make them."""
