"""The local page: the whole job in a browser, for one person on this machine."""
