"""Parts of the entries that reduce sights and adjust levelled lines."""
