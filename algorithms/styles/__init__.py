"""The looks of the output layers, built in code: one look, or one part of it, per file."""
