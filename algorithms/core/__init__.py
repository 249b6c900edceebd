"""What is computed: numpy and pyproj only, no host. Metres, and degrees for latitude, longitude, azimuth."""
