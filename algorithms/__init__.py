"""Toolbox entries: one file is one entry; shared modules beside them; the numbers in ``core``."""
