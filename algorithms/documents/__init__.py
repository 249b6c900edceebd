"""HTML, PDF and CSV from one list of blocks."""
