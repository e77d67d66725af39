"""The door: files become a job here, and nowhere else."""
