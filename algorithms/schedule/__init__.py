"""Parts of the adjustment schedule."""
