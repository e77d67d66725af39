"""Numbers, words, errors, files: what every other room stands on, and nothing of frames."""
