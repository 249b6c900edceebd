"""The profile of the reviewed stations, linked to the map."""
