"""Every table of a job file and each of its fields, declared once: types, words, examples, what is usual."""
