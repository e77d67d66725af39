"""What a job says: complete, checked, in mm and kg."""
