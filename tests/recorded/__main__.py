"""Records all of it anew: `python -m tests.recorded`.  What moved where is to be read in the diff afterwards."""

from tests.recorded.records import record_all

record_all()
