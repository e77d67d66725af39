"""Papers beside the template, one file each: the measuring sheet and the labels."""
