"""What a printer does to a page, and how a page is drawn so that it measures true."""
