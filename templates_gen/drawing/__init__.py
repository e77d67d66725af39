"""What can be on a page, where lettering finds room, and how a page is written."""
