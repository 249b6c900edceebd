"""What the user reads: translation, numbers, heights, words of decisions."""
