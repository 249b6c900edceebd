"""Parts of the review report."""
