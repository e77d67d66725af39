"""Every table of a job file and each of its fields, declared once: types, words, examples, what is usual.

The files here do without `annotations` of `__future__`: types that are text are evaluated when a job is read, which
takes three times as long as evaluating all of them where they are declared (measured).
"""
