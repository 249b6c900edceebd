"""What the docks of the review share."""
