"""Changes of the job file that cure what was found."""
