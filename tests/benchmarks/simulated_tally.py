"""Counts of simulated surveys."""

from collections import Counter
from dataclasses import dataclass


@dataclass
class Tally:
    """Counts of what held by name, over ``number`` surveys."""

    number: int
    held: Counter

    def share(self, name):
        return self.held[name] / self.number
