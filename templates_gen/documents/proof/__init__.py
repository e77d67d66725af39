"""The proof: the wall to a stated scale, as the client is to see it before anything is hung."""
