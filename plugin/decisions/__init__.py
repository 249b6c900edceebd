"""Review of flagged stations: the list, the decisions, and the file that keeps them."""
