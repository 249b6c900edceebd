"""Where a layer keeps the record of its run: by itself, since the window looks for it without drawing anything."""

RECORD_PROPERTY = "tautline/record"
