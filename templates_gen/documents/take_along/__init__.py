"""The take-along page: the job on a phone at the wall, in one file that asks nobody for anything."""
