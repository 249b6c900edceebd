"""What the user sees in the desktop. Nothing is computed here."""
