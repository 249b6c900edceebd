"""The boundary between features and arrays."""
