"""The words that a form offers and the core takes, by themselves: the host makes every form when it starts."""

DESIGNS = ("chord", "tangent", "inclined", "reference", "level", "grade")
EARTHS = ("ellipsoid", "sphere", "flat")
# What the line in plan is judged by.
LINES = ("none", "axis", "chord", "fitted")
ANGLE_UNITS = ("degree", "dms", "packed", "gon")
# What the decimals of typed numbers stand after.
SIGNS = ("point", "comma")
