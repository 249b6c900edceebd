"""What a run reads about one structure."""
