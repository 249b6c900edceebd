"""Parts of the comparison of surveys."""
