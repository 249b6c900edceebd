"""Parts of the entries that state, fit or test a design."""
