"""Other Earth models, for comparison only: a sphere by chainage, and the field rule (method page 4)."""

import numpy as np

# 8 inches per mile squared is s^2/2R with this radius: 3960 international miles.
FIELD_RULE_RADIUS = 3960 * 1609.344


def sphere_tangent(along, height, radius, chainage_height):
    """Height of the tangent at its point's ``height``, at chainages ``along`` from there; metres (n,)."""
    angle = np.asarray(along, float) / (radius + chainage_height)
    r = radius + height
    # r / cos(angle) - r without the loss of digits, then the height on top.
    return height + r * 2.0 * np.sin(0.5 * angle) ** 2 / np.cos(angle)


def sphere_inclined(along, height, slope, radius, chainage_height):
    """Height of a straight line that rises by ``slope`` against the horizon at its point; metres (n,)."""
    angle = np.asarray(along, float) / (radius + chainage_height)
    tilt = np.arctan(slope)
    r = radius + height
    gain = (np.cos(tilt) - np.cos(angle + tilt)) / np.cos(angle + tilt)
    return height + r * gain


def sphere_chord(along, height_a, height_b, length, radius, chainage_height):
    """Height of the straight line through two points ``length`` metres of chainage apart; metres (n,)."""
    angle = np.asarray(along, float) / (radius + chainage_height)
    whole = length / (radius + chainage_height)
    r_a, r_b = radius + height_a, radius + height_b
    weight_a, weight_b = np.sin(whole - angle), np.sin(angle)
    denominator = r_a * weight_b + r_b * weight_a
    # r - r_a = r_a (r_b (sin whole - sin(whole - angle)) - r_a sin angle) / denominator.
    difference = 2.0 * np.cos(whole - 0.5 * angle) * np.sin(0.5 * angle)
    return height_a + r_a * (r_b * difference - r_a * weight_b) / denominator


def field_rule(along, height):
    """Height of the tangent by the field rule, 8 inches per mile squared; metres (n,)."""
    return height + np.asarray(along, float) ** 2 / (2.0 * FIELD_RULE_RADIUS)


def field_rule_between(from_a, to_b):
    """Straight line through A and B less the flat one, by the field rule; metres (n,), below 0 between A and B.

    ``from_a``, ``to_b``: distances to A and B, metres, below 0 beyond them. It follows from the tangent's rule: a line
    that leaves a tangent by s squared over 2 R and meets it at two points leaves the chord by their product.
    """
    return -np.asarray(from_a, float) * np.asarray(to_b, float) / (2.0 * FIELD_RULE_RADIUS)
