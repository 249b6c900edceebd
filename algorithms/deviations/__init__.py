"""Parts of the drawn deviations."""
